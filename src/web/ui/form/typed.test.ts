import { describe, expect, it } from 'vitest';
import { type Typed, typedOf } from './typed.ts';

interface Plate {
  readonly title: string;
  readonly isKept: boolean;
  readonly portion: { readonly amount: string; readonly unit: string };
  readonly companions: readonly { readonly name: string; readonly portion: { readonly amount: string } }[];
}
const start: Plate = {
  title: 'toast',
  isKept: false,
  portion: { amount: '1', unit: 'slice' },
  companions: [
    { name: 'butter', portion: { amount: '5' } },
    { name: 'jam', portion: { amount: '10' } },
  ],
};

/** A form whose values are kept here; `read` is what a screen would draw next. */
function form(wrongAt?: (place: string) => string | undefined) {
  let values = start;
  const read = (): Typed<Plate> =>
    typedOf(
      values,
      next => {
        values = next(values);
      },
      wrongAt,
    );
  return { read, now: () => values };
}

describe('a typed form', () => {
  it('[WEB-3] a field is changed by its name, in parts and rows too, and nothing else is', () => {
    const { read, now } = form();
    read().field('title').onChange('toast with jam');
    read().part('portion').field('amount').onChange('2');
    read().rows('companions').each[1]!.part('portion').field('amount').onChange('15');
    expect(now()).toEqual({
      title: 'toast with jam',
      isKept: false,
      portion: { amount: '2', unit: 'slice' },
      companions: [start.companions[0], { name: 'jam', portion: { amount: '15' } }],
    });
    expect(start.companions[1]!.portion.amount).toBe('10');
  });

  it('[WEB-3] two changes of one moment both count', () => {
    const { read, now } = form();
    const drawn = read();
    drawn.field('title').onChange('a');
    drawn.field('isKept').onChange(true);
    drawn.rows('companions').add({ name: 'honey', portion: { amount: '1' } });
    drawn.rows('companions').each[0]!.remove();
    expect(now()).toMatchObject({ title: 'a', isKept: true, companions: [{ name: 'jam' }, { name: 'honey' }] });
  });

  it('[WEB-3] what is wrong stands beside its field, by its place', () => {
    const { read } = form(place => ({ title: 'too long', 'companions[1].portion.amount': 'not a number' })[place]);
    expect(read().field('title').wrong).toBe('too long');
    expect(read().rows('companions').each[1]!.part('portion').field('amount').wrong).toBe('not a number');
    expect(read().rows('companions').each[0]!.part('portion').field('amount').wrong).toBeUndefined();
  });

  it('[WEB-3] a field that is misspelt, or of another kind, does not compile', () => {
    const typed = form().read();
    // @ts-expect-error there is no such field
    expect(typed.field('titel').value).toBeUndefined();
    // @ts-expect-error a title is not a list
    expect(typed.rows('title').each).toEqual([]);
    // @ts-expect-error a part has fields of its own
    expect(typed.part('portion').field('amont').value).toBeUndefined();
    // @ts-expect-error a text is no tick
    const tick: { readonly value: boolean } = typed.field('title');
    expect(tick.value).toBe('toast');
  });
});
