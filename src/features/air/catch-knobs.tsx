/** The rail that ends a flight: which, how far along, and what counts as a catch. What a file leaves out is what a reader takes for it. */
import type { FileCatch } from '../../../sim/index.ts';
import { useDocument } from '../../app/page.ts';
import { changeCatch } from '../../document/contact-edits.ts';
import { Knob, Pick } from './knob.tsx';
import { SCALES } from './scales.ts';
import { contactTexts as t } from './words.ts';

const k = t.knobs;
/** m and m/s, where a file says nothing (docs/skill-file.md) */
const UNSAID = { along: 0, gap: 0.05, closing: 2 } as const;

export function CatchKnobs(props: { asked: FileCatch }) {
  const doc = useDocument();
  return (
    <>
      <p class="quiet">{t.caught}</p>
      <Pick
        label={k.rail}
        value={props.asked.rail}
        names={Object.keys(k.rails)}
        words={k.rails}
        choose={(v) => doc.edit(changeCatch(doc.file(), { rail: v as FileCatch['rail'] }), t.changed(k.rail))}
      />
      <Knob
        label={k.apart}
        scale={SCALES.apart}
        value={props.asked.alongM ?? UNSAID.along}
        set={(f, v) => changeCatch(f, { alongM: v })}
      />
      <Knob
        label={k.gap}
        scale={SCALES.gap}
        value={props.asked.gapM ?? UNSAID.gap}
        set={(f, v) => changeCatch(f, { gapM: v })}
      />
      <Knob
        label={k.closing}
        scale={SCALES.closing}
        value={props.asked.closingMPerS ?? UNSAID.closing}
        set={(f, v) => changeCatch(f, { closingMPerS: v })}
      />
    </>
  );
}
