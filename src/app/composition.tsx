/** What a value at the cursor is made of, as one bar. */
import { createMemo, Index } from 'solid-js';
import type { ColourName } from '../ui/plot/palette.ts';
import { sayNumber } from '../ui/units.ts';
import type { CutValues } from './cut-values.ts';
import { useFlight } from './page.ts';
import { getEnergyParts, getMomentumParts, type Part } from './plot/stacks.ts';

/** width of a composition bar on the bench, px, where it is not said */
const BAR_PX = 262;
const colourVar = (name: ColourName): string => `var(--${name})`;

/** Parts of a whole as one bar; what has no room inside is named above it. */
export function Composition(props: { cut: CutValues; kind: 'momentum' | 'energy'; width?: number }) {
  const flight = useFlight();
  const parts = createMemo(() => {
    const f = flight.result().frames;
    const list: Part[] = props.kind === 'momentum' ? getMomentumParts(f) : getEnergyParts(f);
    const { i, share: s } = props.cut.place;
    const valued = list.map((part) => ({ part, value: part.curve(i) * (1 - s) + part.curve(i + 1) * s }));
    const whole = valued.reduce((sum, v) => sum + Math.abs(v.value), 0) || 1;
    return valued.map((v) => ({ ...v, percent: (Math.abs(v.value) / whole) * 100 }));
  });
  const word = (p: { part: Part; value: number }): string => `${p.part.name} ${sayNumber(props.kind, p.value)}`;
  const inside = (p: { percent: number; part: Part; value: number }): boolean =>
    (p.percent / 100) * (props.width ?? BAR_PX) > word(p).length * 6.4 + 12;
  return (
    <div class="composition">
      <p>
        {parts()
          .filter((p) => !inside(p))
          .map(word)
          .join(', ')}
      </p>
      <div class="composition-bar">
        <Index each={parts()}>
          {(p) => (
            <span
              classList={{ against: p().value < 0 }}
              style={{
                width: `${p().percent}%`,
                background: colourVar(p().part.colour),
                color: colourVar(p().part.on),
              }}
            >
              {inside(p()) ? word(p()) : ''}
            </span>
          )}
        </Index>
      </div>
    </div>
  );
}
