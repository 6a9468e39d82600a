/** The bob on a time axis: a slider for the keyboard and for screen readers, with the time on its plate. */
import type { JSX } from 'solid-js';

export function TimeBob(props: {
  label: string;
  least: number;
  most: number;
  now: number;
  words: string;
  /** px from the left end of the axis */
  x: number;
  onKeyDown?: (e: KeyboardEvent) => void;
  children: JSX.Element;
}) {
  return (
    <div
      class="bob"
      role="slider"
      tabIndex={0}
      aria-label={props.label}
      aria-valuemin={Number(props.least.toFixed(3))}
      aria-valuemax={Number(props.most.toFixed(3))}
      aria-valuenow={Number(props.now.toFixed(3))}
      aria-valuetext={props.words}
      style={{ transform: `translateX(${props.x}px)` }}
      onKeyDown={(e) => props.onKeyDown?.(e)}
    >
      <span class="bob-plate">{props.children}</span>
      <svg class="bob-point" width="16" height="9" aria-hidden="true">
        <path d="M0 0 H16 L8 9 Z" />
      </svg>
    </div>
  );
}
