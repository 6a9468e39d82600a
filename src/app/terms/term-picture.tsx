/** Small drawn pictures of the special words: a body as head and strokes, and what the word is about as a line or an arrow. */
import { type JSX, Match, Switch } from 'solid-js';
import type { TermName } from './term-name.ts';

interface Place {
  readonly x: number;
  readonly y: number;
  /** deg, clockwise about the middle of the body */
  readonly turned?: number;
}

/** `arms`: as a path from the shoulders, at 0 -11 of the body's middle. */
const Body = (props: Place & { arms: string; legs?: string; trunk?: string }): JSX.Element => (
  <g class="body" transform={`translate(${props.x} ${props.y}) rotate(${props.turned ?? 0})`}>
    <circle cx="0" cy="-22" r="5" />
    <path d={props.trunk ?? 'M0 -16V6'} />
    <path d={props.legs ?? 'M0 6L-3 30M0 6L3 30'} />
    <path d={props.arms} />
  </g>
);

const WIDE = 'M-22 -11H22';
const IN = 'M0 -11L-5 -4L4 -2M0 -11L5 -4L-4 -2';
const ONE_DOWN = 'M0 -11L9 -36M0 -11L-8 10';
const OVERHEAD = 'M0 -11L-4 -36M0 -11L4 -36';

export const TermPicture = (props: { name: TermName }): JSX.Element => (
  <svg class="term-picture" viewBox="0 0 120 96" width="120" height="96" aria-hidden="true">
    <Switch>
      <Match when={props.name === 'tilt'}>
        <path class="line" d="M60 6V90" />
        <Body x={60} y={52} turned={14} arms={ONE_DOWN} />
        <path class="arrow" d="M60 14A40 40 0 0 1 70 15.5" />
        <path class="head" d="M70 15.5l-6 -4l-1 6z" />
      </Match>
      <Match when={props.name === 'longAxis'}>
        <path class="line" d="M60 2V94" />
        <Body x={60} y={50} arms={IN} />
        <path class="arrow" d="M38 56A22 7 0 0 0 82 56" />
        <path class="head" d="M82 56l-7 1l4 5z" />
      </Match>
      <Match when={props.name === 'momentOfInertia'}>
        <path class="line" d="M34 8V92M92 8V92" />
        <Body x={34} y={50} arms={WIDE} />
        <path class="arrow" d="M34 30H56" />
        <path class="head" d="M56 30l-6 -3v6z" />
        <Body x={92} y={50} arms={IN} />
        <path class="arrow" d="M92 56H98" />
        <path class="head" d="M101 56l-6 -3v6z" />
      </Match>
      <Match when={props.name === 'angularMomentum'}>
        <Body x={34} y={50} arms={OVERHEAD} />
        <path class="arrow" d="M58 34A26 26 0 0 1 56 64" />
        <path class="head" d="M55 66l1 -7l5 3z" />
        <Body x={88} y={48} turned={-50} arms="M0 -11L10 6" trunk="M0 -16Q-6 -4 0 6" legs="M0 6L14 -4L12 12" />
        <path class="arrow" d="M70 26A28 28 0 1 1 72 72" />
        <path class="head" d="M70 73l5 -6l2 6z" />
      </Match>
      <Match when={props.name === 'wobble'}>
        <path class="line" d="M60 6V90" />
        <g class="faint">
          <Body x={60} y={52} turned={-9} arms={IN} />
        </g>
        <Body x={60} y={52} turned={9} arms={IN} />
        <path class="arrow" d="M50 17A38 38 0 0 1 70 17" />
        <path class="head" d="M72 18l-7 -3l1 6zM48 18l7 -3l-1 6z" />
      </Match>
    </Switch>
  </svg>
);
