/** At the two rows of shapes: which way is which, and at the right how each ends. */
import { For, type JSX, Show } from 'solid-js';
import type { SkillVerdict } from '../../../sim/index.ts';
import type { VersionLetter } from '../../document/versions.ts';
import { VersionTag } from '../../features/compare/version-tag.tsx';
import type { Beside } from '../beside.ts';
import type { BesideTurn } from '../beside-numbers.ts';
import { besideTexts as t, wordTurns } from '../beside-words.ts';
import { speakVerdict, wordEnding } from '../say/sentence-words.ts';
import { useWholeState } from '../whole-state.ts';
import { BESIDE_GAP, BESIDE_TILE } from './ground-plan.ts';

export function BesideNames(props: {
  beside: Beside;
  /** px of A's row, and its height */
  top: number;
  tile: number;
  cutX: number;
  /** there is room at the right */
  hasEndings: boolean;
}) {
  const whole = useWholeState();
  const ways = () =>
    [
      { letter: 'A', way: props.beside.own, verdict: whole.verdict() },
      { letter: props.beside.letter, way: props.beside.other, verdict: props.beside.verdict() },
    ] as const;
  const place = (i: number): { top: string; height: string } =>
    i === 0
      ? { top: `${props.top}px`, height: `${props.tile}px` }
      : { top: `${props.top + props.tile + BESIDE_GAP}px`, height: `${BESIDE_TILE}px` };
  return (
    <For each={[0, 1]}>
      {(i) => (
        <>
          <p class="beside-name" style={place(i)}>
            <VersionTag letter={ways()[i].letter} /> {ways()[i].way}
          </p>
          <Show when={props.hasEndings ? ways()[i].verdict : undefined}>
            {(verdict) => (
              <p class="beside-end" style={{ left: `${props.cutX}px`, ...place(i) }}>
                <BesideEnd letter={ways()[i].letter} verdict={verdict()} turn={props.beside.turn} />
              </p>
            )}
          </Show>
        </>
      )}
    </For>
  );
}

/** The letters alone at the two rows, where there is no room for names. */
export const BesideRowNames = (props: {
  beside: Beside;
  top: number;
  tile: number;
  gap: number;
  otherTile: number;
}) => (
  <>
    <p class="beside-name" style={{ top: `${props.top}px`, height: `${props.tile}px` }}>
      <VersionTag letter="A" small /> <span>{props.beside.own}</span>
    </p>
    <p class="beside-name" style={{ top: `${props.top + props.tile + props.gap}px`, height: `${props.otherTile}px` }}>
      <VersionTag letter={props.beside.letter} small /> <span>{props.beside.other}</span>
    </p>
  </>
);

/** What it misses; where it misses nothing, how much is turned and how it ends. */
function BesideEnd(props: { letter: 'A' | VersionLetter; verdict: SkillVerdict; turn: BesideTurn }): JSX.Element {
  const count = (): string => {
    const { twists, somersaults } = props.verdict.flown;
    const turned = props.turn === 'twist' ? twists : somersaults;
    return t[props.turn](wordTurns(turned ?? Number.NaN));
  };
  return (
    <>
      <VersionTag letter={props.letter} />
      <Show
        when={props.verdict.missed.length > 0}
        fallback={
          <span>
            <b class={props.turn === 'twist' ? 'twist' : 'som'}>{count()}</b>, {wordEnding(props.verdict)}
          </span>
        }
      >
        <span>{speakVerdict(props.verdict).split('; ')[0]}</span>
      </Show>
    </>
  );
}
