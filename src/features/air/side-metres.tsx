/** True metres of the side view, under the floor: 0 is the first take-off's mass centre, or the rail. */
import { For } from 'solid-js';
import { formatNumber } from '../../ui/numbers.ts';
import { unitSystem } from '../../ui/units.ts';
import type { AirFrame } from './air-frame.ts';
import type { SideRange } from './side-picture.tsx';

/** px of the strip that it is in */
const HEIGHT = 22;

export function SideMetres(props: { frame: AirFrame; range: SideRange }) {
  const marks = () => {
    const { unit, perUnitM } = unitSystem().lengthMarks ?? { unit: 'm', perUnitM: 1 };
    const px = props.frame.pxPerM * perUnitM;
    const step = [1, 2, 5, 10].find((n) => n * px >= 30) ?? 20;
    const { x0 } = props.range;
    const list: { x: number; text: string }[] = [];
    const width = props.frame.sideWidth;
    for (let n = Math.ceil((14 - x0) / (px * step)) * step; x0 + n * px < width - 16; n += step)
      list.push({ x: x0 + n * px, text: formatNumber(n, 0) });
    const last = list[list.length - 1];
    if (last) last.text += ` ${unit}`;
    return list;
  };
  return (
    <svg class="side-metres" width={props.frame.sideWidth} height={HEIGHT} aria-hidden="true">
      <For each={marks()}>
        {({ x, text }) => (
          <>
            <path d={`M${Math.round(x) + 0.5} 0v6`} />
            <text x={x} y={HEIGHT - 4} text-anchor="middle">
              {text}
            </text>
          </>
        )}
      </For>
    </svg>
  );
}
