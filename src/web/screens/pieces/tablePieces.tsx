import { useState } from 'react';
import layout from '../../ui/layout.module.css';
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

/** The one table: a few rows, in groups, thousands of which those in view exist, none. */
export function TablePieces() {
  const [picked, setPicked] = useState<string>();
  return (
    <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="table-pieces">
      <h2 id="table-pieces">Tables</h2>
      <Table label="A few boxes" rows={few} keyOf={keyOf} columns={columns} startSort={{ key: 'weight', isDown: true }} />
      <Table label="Boxes by room" rows={few} keyOf={keyOf} columns={columns} groupOf={roomOf} />
      <Table label="Many boxes" rows={many} keyOf={keyOf} columns={columns} wordsOf={wordsOf} picked={picked} onPick={setPicked} />
      <p role="status">Picked: {picked === undefined ? 'none' : many[Number(picked)]?.name}.</p>
      <Table label="No boxes" rows={[]} keyOf={keyOf} columns={columns} empty={<p>No box yet. Put one into the hall.</p>} />
    </section>
  );
}
