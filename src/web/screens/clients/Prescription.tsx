import { useRef, useState } from 'react';
import type { Client } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { useOffered } from '../../ui/action/offered.ts';
import { Draft } from '../../ui/draft/Draft.tsx';
import { useDraft } from '../../ui/draft/useDraft.ts';
import { useTyped } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { OpenTable } from '../../ui/OpenTable.tsx';
import text from '../../ui/text.module.css';
import styles from './Client.module.css';
import { type TakeActions, useTakeActions } from './prescriptionActions.ts';
import { SignedPrescriptions } from './SignedPrescriptions.tsx';
import { SignForm } from './SignForm.tsx';
import { shownDay } from './shownDay.ts';
import { TargetOpened } from './TargetOpened.tsx';
import { TargetState } from './TargetState.tsx';
import { type Decision, decidedFigure, isOpenDecision, type SignedTarget, signedBefore, type Target } from './typedDecision.ts';
import { typedPrescription } from './typedPrescription.ts';
import { vaultDraft } from './vaultDraft.ts';
import type { PickWeight } from './WeightChoice.tsx';

interface Given {
  readonly client: Client;
  readonly onPick: PickWeight;
}

const headings = ['Nutrient', 'Target', 'Basis', 'Why', 'Source', 'State'] as const;

/** The prescription that is signed, a line a target, with what would differ today; else the proposal. A line opens in its place, and is decided there. */
export function Prescription({ client, onPick }: Given) {
  const [signed] = client.prescriptions;
  if ((client.targets ?? []).length === 0)
    return (
      <section className={styles.section} aria-labelledby="prescription-title">
        <h2 id="prescription-title">Nutrition prescription, a day</h2>
        <p>No target is proposed until the questions above are answered.{signed === undefined ? '' : ' What is signed stands below.'}</p>
        <SignedPrescriptions client={client} />
      </section>
    );
  return <Lines client={client} onPick={onPick} />;
}

function Lines({ client, onPick }: Given) {
  const { targets = [] } = client;
  const [signed] = client.prescriptions;
  const typed = useTyped(() => typedPrescription(client));
  const draft = useDraft(vaultDraft(client.id, 'prescription'), typed);
  const [open, setOpen] = useState<readonly string[]>([]);
  const take = useTakeActions(targets, typed);
  useOffered(take.all === undefined ? [] : [take.all]);
  const box = useRef<HTMLElement>(null);
  const decisions = typed.part('decisions');
  const row = (target: Target) => {
    const decision = typed.values.decisions[target.item]!;
    const before = signedBefore(client, target.item);
    return {
      key: target.item,
      name: target.title,
      cells: cellsOf(target, decision, before),
      ...belowOf(target, decision, before, take),
      opened: () => (
        <TargetOpened client={client} target={target} signed={before} decision={decisions.field(target.item)} onPick={onPick} />
      ),
    };
  };
  const unwritten = targets.filter(({ item }) => isOpenDecision(typed.values.decisions[item]!)).map(({ item }) => item);
  return (
    <section className={styles.section} aria-labelledby="prescription-title" ref={box}>
      <header className={layout.spread}>
        <h2 id="prescription-title">Nutrition prescription, a day</h2>
        <span className={`${text.small} ${text.soft}`}>
          {signed === undefined ? 'proposed, not signed' : `signed ${shownDay(signed.signedAt)}, ${signed.signedBy}`}
        </span>
      </header>
      <Draft draft={draft} />
      <div className={styles.lines}>
        <OpenTable
          label="Nutrition prescription, a day"
          headings={headings}
          rows={targets.map(row)}
          open={open}
          onOpen={(key, isOpen) => setOpen(isOpen ? [...open, key] : open.filter(one => one !== key))}
        />
      </div>
      {take.all !== undefined && (
        <p className={`${layout.spread} ${layout.noprint}`}>
          <span className={`${text.small} ${text.soft}`}>
            What is signed stays as it was; changing begins from it and keeps every choice and reason.
          </span>
          <ActionButton action={take.all} />
        </p>
      )}
      <SignForm
        client={client}
        typed={typed}
        unwritten={unwritten}
        onUnwritten={() => {
          setOpen([...new Set([...open, ...unwritten])]);
          // What needs to be written stands after the next drawing.
          requestAnimationFrame(() => box.current?.querySelector<HTMLElement>('td input:invalid')?.focus());
        }}
        forget={draft.forget}
      />
      <SignedPrescriptions client={client} />
    </section>
  );
}

/** The basis and the reason of what was signed, as they stood then; of today's where it is decided anew. */
function cellsOf(target: Target, decision: Decision, before: SignedTarget | undefined) {
  const line = decision.isAsSigned ? before?.line : target.line;
  const isOwn = decision.from !== 'proposal';
  return [
    <b key="figure">{decidedFigure(decision, target, before)}</b>,
    line?.basis ?? '–',
    isOwn && decision.reason !== '' ? decision.reason : (line?.why ?? before?.says ?? ''),
    isOwn && decision.from === 'own' && !decision.isAsSigned ? 'own' : (line?.source ?? ''),
    <TargetState key="state" decision={decision} isSigned={before !== undefined} />,
  ];
}

/** Under a line that stands as signed: what would be proposed with what came since, and taking it. */
function belowOf(
  { item, inShort, line, differsSinceSigned }: Target,
  decision: Decision,
  before: SignedTarget | undefined,
  take: TakeActions,
) {
  if (!decision.isAsSigned || differsSinceSigned !== true) return {};
  const isSameWhy = line.why === before?.line?.why && line.basis !== undefined;
  const why = [line.basis, ...(isSameWhy ? [] : [line.why])].filter(one => one !== undefined).join('; ');
  return {
    below: {
      says: (
        <span className={styles.would}>
          → would be <b>{inShort}</b>: {why}
        </span>
      ),
      act: <ActionButton action={take.one(item)} />,
    },
  };
}
