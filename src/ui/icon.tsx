/** Small signs, drawn by us: 20 x 20, one line weight. Never the only carrier of a meaning. */
import { For } from 'solid-js';

const PATHS = {
  fly: ['M2 16.5 C3.5 2.5 14.5 1.5 16.6 13.6', 'M12.8 11.4 L16.9 14.6 L19 9.8'],
  hold: ['M10 2 V9.5', 'M6 9.5 H14 L10 17.5 Z'],
  back: ['M12.5 4.5 L7 10 L12.5 15.5'],
  on: ['M7.5 4.5 L13 10 L7.5 15.5'],
  menu: ['M3 5.5 H17', 'M3 10 H17', 'M3 14.5 H17'],
  close: ['M4.5 4.5 L15.5 15.5', 'M15.5 4.5 L4.5 15.5'],
  plus: ['M10 4 V16', 'M4 10 H16'],
  minus: ['M4 10 H16'],
  enlarge: ['M8 3.5 H3.5 V8', 'M12 16.5 H16.5 V12', 'M3.5 3.5 L8.5 8.5', 'M16.5 16.5 L11.5 11.5'],
  down: ['M5 7.5 L10 12.5 L15 7.5'],
  more: ['M4.5 10 H4.6', 'M10 10 H10.1', 'M15.5 10 H15.6'],
  find: ['M8.5 3 A5.5 5.5 0 1 1 8.4 3 Z', 'M12.7 12.7 L17 17'],
  undo: ['M7 4 L3 8 L7 12', 'M3 8 H12 A4.5 4.5 0 0 1 12 17 H9'],
  redo: ['M13 4 L17 8 L13 12', 'M17 8 H8 A4.5 4.5 0 0 0 8 17 H11'],
  pin: ['M7 3 H13 L12.2 9 L14.5 12 H5.5 L7.8 9 Z', 'M10 12 V18'],
  caution: ['M10 2.5 L18.5 17 H1.5 Z', 'M10 8 V12', 'M10 14 V15'],
  twist: ['M10 2 V18', 'M4 12.5 C4 9.5 16 9.5 16 12.5 C16 14.6 11.5 15 8.5 14.7', 'M10.7 12.6 L8 14.7 L10.6 16.7'],
  somersault: ['M15.8 7.2 A6.5 6.5 0 1 1 10 3.5', 'M12.6 1.2 L10 3.5 L12.6 6', 'M9.2 10 H10.8'],
  tilt: ['M10 18 V3', 'M10 17 L15.5 3.5', 'M10 5.5 A11 11 0 0 1 14 6.4'],
} as const;
const FILLED = new Set<string>(['hold', 'pin']);

type IconName = keyof typeof PATHS;

export function Icon(props: { name: IconName; size?: number; class?: string }) {
  return (
    <svg
      class={`icon ${props.class ?? ''}`}
      viewBox="0 0 20 20"
      width={props.size ?? 20}
      height={props.size ?? 20}
      fill={FILLED.has(props.name) ? 'currentColor' : 'none'}
      stroke="currentColor"
      stroke-width="1.7"
      stroke-linejoin="round"
      stroke-linecap="round"
      aria-hidden="true"
    >
      <For each={PATHS[props.name]}>{(d) => <path d={d} />}</For>
    </svg>
  );
}

/** The mark of the bench: a plumb bob under the arc of a flight. */
export function Mark() {
  return (
    <svg class="mark" viewBox="0 0 24 24" width="24" height="24" fill="none" stroke="currentColor" aria-hidden="true">
      <path d="M3 17 C5 3 19 3 21 17" stroke-width="2" stroke-linecap="round" />
      <path d="M12 6.5 V15" stroke-width="1.5" />
      <path d="M9.2 14.5 H14.8 L12 21 Z" fill="currentColor" stroke="none" />
      <path d="M1.5 18.5 H8 M16 18.5 H22.5" stroke-width="2" />
    </svg>
  );
}

/** Sign of a side, upright as a limb is: left filled, right open, both halved; trunk and hips a block. */
export function SideSign(props: { side: 'left' | 'right' | 'both' | 'centre' }) {
  return (
    <svg class="side-sign" viewBox="0 0 12 12" width="11" height="11" aria-hidden="true">
      {props.side === 'centre' ? (
        <rect x="1.5" y="1.5" width="9" height="9" fill="currentColor" />
      ) : (
        <>
          <rect
            x="3.2"
            y="0.8"
            width="5.6"
            height="10.4"
            rx="2.6"
            fill={props.side === 'left' ? 'currentColor' : 'var(--raise)'}
            stroke="currentColor"
            stroke-width="1.6"
          />
          {props.side === 'both' && (
            <path d="M6 1 H5.8 A2.6 2.6 0 0 0 3.2 3.4 V8.6 A2.6 2.6 0 0 0 5.8 11 H6 Z" fill="currentColor" />
          )}
        </>
      )}
    </svg>
  );
}
