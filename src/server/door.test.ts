import { expect, test } from 'vitest';
import { openDoor, portOf } from './door.ts';

test('[SRV-49] a port is a whole number up to 65535, 0 for any', () => {
  expect(['', undefined, '0', '4173', '65535'].map(portOf)).toEqual([4173, 4173, 0, 4173, 65_535]);
  for (const wrong of ['no', '-1', '65536', '4173.5', '0x10', ' 80', '1e3', '000080', '٣', '80\0']) {
    expect(() => portOf(wrong), wrong).toThrow(expect.objectContaining({ code: 'port-not-valid' }));
  }
});

test('[SRV-49] the port is held from the first moment: a second program is refused, and who asks early is answered later', async () => {
  const door = await openDoor(0);
  const { port } = new URL(door.origin);
  await expect(openDoor(Number(port))).rejects.toMatchObject({ code: 'port-in-use' });
  const early = fetch(door.origin);
  door.answerWith(() => new Response('here'));
  expect(await (await early).text()).toBe('here');
  await door.close();
  await expect(fetch(door.origin)).rejects.toThrow();
});
