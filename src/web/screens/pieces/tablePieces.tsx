import { useState } from 'react';
import layout from '../../ui/layout.module.css';
import { OpenTable, type OpenTableRow } from '../../ui/OpenTable.tsx';
import type { Column } from '../../ui/table/column.ts';
import { Table } from '../../ui/table/Table.tsx';

interface Box {
  readonly key: string;
  readonly name: string;
  readonly room: string;
  readonly weightKg: number | null;
  readonly inside: string;
}
const rooms = ['attic', 'cellar', 'hall'];
const boxes = (count: number): readonly Box[] =>
  Array.from({ length: count }, (_, at) => ({
    key: String(at),
    name: `Box ${at + 1}`,
    room: rooms[at % rooms.length]!,
    weightKg: at % 7 === 3 ? null : (at * 37) % 50,
    inside: at % 4 === 0 ? 'Books, and a note that is so long that it does not stand in one line of its column' : 'Cups',
  }));
const few = boxes(5);
const many = boxes(5_000);
const columns: readonly Column<Box>[] = [
  { key: 'name', name: 'Box', cell: ({ name }) => name, sortBy: ({ name }) => name, width: 'minmax(0, 2fr)' },
  {
    key: 'weight',
    name: 'Weight',
    cell: ({ weightKg }) => (weightKg === null ? 'unknown' : `${weightKg} kg`),
    sortBy: ({ weightKg }) => weightKg,
    isNumber: true,
    width: '6rem',
  },
  { key: 'room', name: 'Room', cell: ({ room }) => room, sortBy: ({ room }) => room },
  { key: 'inside', name: 'Inside', cell: ({ inside }) => inside, width: 'minmax(0, 3fr)' },
];
const keyOf = ({ key }: Box): string => key;
const roomOf = ({ room }: Box): string => room;
const wordsOf = ({ name, room }: Box): string => `${name} ${room}`;

const opening: readonly OpenTableRow[] = few.slice(0, 3).map(({ key, name, room, weightKg, inside }, at) => ({
  key,
  name,
  cells: [<b key="weight">{weightKg === null ? 'unknown' : `${weightKg} kg`}</b>, room, inside, 'packed'],
  ...(at === 2 ? {} : { below: { says: '→ would be 12 kg without the books', act: 'as it is' } }),
  opened: () => <p>{name} stands by the wall.</p>,
}));

/** A line each that opens; the one table: a few rows, in groups, thousands of which those in view exist, none. */
export function TablePieces() {
  const [picked, setPicked] = useState<string>();
  const [open, setOpen] = useState<readonly string[]>(['1']);
  return (
    <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="table-pieces">
      <h2 id="table-pieces">Tables</h2>
      <OpenTable
        label="Boxes that open"
        headings={['Box', 'Weight', 'Room', 'Inside', 'State']}
        rows={opening}
        open={open}
        onOpen={(key, isOpen) => setOpen(isOpen ? [...open, key] : open.filter(one => one !== key))}
      />
      <Table label="A few boxes" rows={few} keyOf={keyOf} columns={columns} startSort={{ key: 'weight', isDown: true }} />
      <Table label="Boxes by room" rows={few} keyOf={keyOf} columns={columns} groupOf={roomOf} />
      <Table label="Many boxes" rows={many} keyOf={keyOf} columns={columns} wordsOf={wordsOf} picked={picked} onPick={setPicked} />
      <p role="status">Picked: {picked === undefined ? 'none' : many[Number(picked)]?.name}.</p>
      <Table label="No boxes" rows={[]} keyOf={keyOf} columns={columns} empty={<p>No box yet. Put one into the hall.</p>} />
    </section>
  );
}
