import type { Survey } from '../../api.ts';
import { Tick } from '../../ui/form/Ticks.tsx';
import layout from '../../ui/layout.module.css';
import text from '../../ui/text.module.css';

/** What the yardstick tests, in words; a test that is judged only when switched on has the switch. */
export function TestsSheet({
  survey: { tests, cautions },
  switchedOn,
  onSwitch,
}: {
  readonly survey: Survey;
  readonly switchedOn: readonly string[];
  readonly onSwitch: (switchedOn: readonly string[]) => void;
}) {
  return (
    <section className={`${layout.sheet} ${text.small}`} aria-label="What the yardstick tests">
      {tests.map(({ id, text: words, isOn }) =>
        isOn && !switchedOn.includes(id) ? (
          <p key={id}>{words}</p>
        ) : (
          <Tick
            key={id}
            label={words}
            value={isOn}
            onChange={on => onSwitch(on ? [...switchedOn, id] : switchedOn.filter(one => one !== id))}
          />
        ),
      )}
      {cautions.map(caution => (
        <p key={caution} className={text.soft}>
          {caution}
        </p>
      ))}
      <p className={text.soft}>
        Targets and advice are for licensed dietitians working with the client’s kidney team; local protocols come first.
      </p>
    </section>
  );
}
