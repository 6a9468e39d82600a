/** A way to hand on, and what it is given. How to add one is said in ways.ts. */
import type { Accessor, Component } from 'solid-js';
import type { Along, Handed, SkillFile } from '../../../sim/index.ts';
import type { OfferedClip } from '../../app/clip-door.ts';
import type { Page } from '../../app/page.ts';
import type { CodePicture } from './code-picture.ts';
import type { Later } from './later.ts';

/** What of the time it takes, as pegs on the ruler, or as one span of it; s. */
export type WayTime =
  | {
      readonly kind: 'pegs';
      readonly times: readonly number[];
      /** beside each, where there is room */
      readonly names?: readonly string[];
      /** left out: they cannot be moved */
      move?(index: number, t: number): void;
    }
  | { readonly kind: 'span'; readonly from: number; readonly to: number };

/** A way at work. */
export interface WayWork {
  /** "making it: 148 of 250 pictures" */
  readonly text: string;
  /** 0 to 1 */
  readonly share: number;
  cancel(): void;
}

interface SaidOf {
  /** of a way */
  readonly id: string;
  readonly text: string;
}

export interface HandState {
  readonly page: Page;
  readonly along: Accessor<Along>;
  tick(what: keyof Along): void;
  /** the skill as it leaves; undefined where `cannot` says why not */
  readonly handed: Accessor<Handed | undefined>;
  readonly cannot: Accessor<string | undefined>;
  /** undefined where `linkFault` says why not */
  readonly link: Accessor<string | undefined>;
  readonly linkFault: Accessor<string | undefined>;
  /** what was measured in a clip is kept with the skill */
  hasFilm(): boolean;
  /** the clip that may go along in a file: what is kept with the skill was measured in it, and that goes too */
  offered(): OfferedClip | undefined;
  /** the same, where it was asked for */
  clip(): OfferedClip | undefined;
  withClip(file: SkillFile, clip: string): SkillFile;
  /** the link as a code has it: its sheets are left out where they would make it too fine */
  readonly codeLink: Accessor<{ readonly link: string; readonly isWithoutSheets: boolean } | undefined>;
  /** of that link, where the bench has an address and it is not too long */
  readonly code: Later<CodePicture>;
  /** the address that the link begins with; undefined: it begins with "#" */
  readonly base: Accessor<string | undefined>;
  /** id of a way */
  readonly picked: Accessor<string>;
  pick(id: string): void;
  /** picks it and does it */
  run(way: HandWay): void;
  /** a word at the way, gone after two seconds, spoken too */
  say(id: string, text: string): void;
  readonly said: Accessor<SaidOf | undefined>;
  /** what went wrong, under its row until it is done again */
  fail(id: string, text: string | undefined): void;
  readonly failed: Accessor<SaidOf | undefined>;
  /** shows what the way has over the page */
  open(id: string | undefined): void;
  readonly opened: Accessor<string | undefined>;
  /** a bar under its row, and "Cancel" in place of its verb; undefined: it has ended */
  work(id: string, work: WayWork | undefined): void;
  workOf(id: string): WayWork | undefined;
}

export interface WayProps {
  readonly hand: HandState;
  /** px */
  readonly width: number;
  readonly device: 'bench' | 'tablet' | 'phone';
}

export interface WayOverProps extends WayProps {
  close(): void;
}

export interface HandWay {
  readonly id: string;
  readonly name: string;
  /** on its button, and a short one where there is less room */
  readonly verb: string;
  readonly short: string;
  /** an SVG of 60 x 40; its classes `thumb-paper`, `thumb-ink` have the colours */
  readonly Thumb: Component;
  /** one or two short lines; on a phone `brief` alone */
  lines(hand: HandState): readonly string[];
  brief(hand: HandState): string;
  time?(hand: HandState): WayTime | undefined;
  /** at the right of the rows while it is picked, on touch under its row: preview, more buttons, settings */
  readonly View?: Component<WayProps>;
  /** over the page, from `hand.open(id)` until it is closed */
  readonly Over?: Component<WayOverProps>;
  /** why it cannot be done with this skill: said in place of `lines` */
  refused?(hand: HandState): string | undefined;
  /** what it throws is said under its row; `wasPicked`: its view was seen before the press */
  run(hand: HandState, wasPicked: boolean): void | Promise<void>;
}
