/** A hall: projector and bright gym. Large text, strong lines, and nothing that names the athlete; a clicker steps the shapes. */
import { createMemo, type JSX, onCleanup, Show } from 'solid-js';
import { Dynamic } from 'solid-js/web';
import { commandTexts } from '../../commands/words.ts';
import { LiveNumbers } from '../../features/instant/live-numbers.tsx';
import { TiltTrio } from '../../features/instant/tilt-trio.tsx';
import { PlayButton } from '../../features/ruler/floor.tsx';
import { makeAxis, tOf, xOf } from '../../ui/plot/axis.ts';
import { useSize } from '../../ui/size.ts';
import { calcBesideRows } from '../beside-numbers.ts';
import { useChangeAnswer } from '../change-answer.ts';
import { useCut } from '../cut-values.ts';
import { useFirstRows } from '../first-story.ts';
import { useCursor, useFlight, useShell } from '../page.ts';
import { leavingRoom } from '../stage-fit.ts';
import { texts } from '../words.ts';
import { AnswerLine } from './answer-line.tsx';
import { CautionLine } from './caution-line.tsx';
import { FirstNumbers } from './first-numbers.tsx';
import { FloorBand } from './floor-band.tsx';
import { HallArea, type HallTwo } from './hall-area.tsx';
import { HallSpoken } from './hall-spoken.tsx';
import { useBesideParts } from './late-beside.ts';
import { Computing, Sentence, useFirstQuestionParts, useIsLate } from './sentence.tsx';
import { Stage } from './stage/stage.tsx';
import { useAxis } from './steady.ts';
import { TouchGround } from './touch-ground.tsx';
import { useTouchRows } from './touch-rows.ts';
import { useUnrolledViews } from './unrolled-views.ts';
import './hall.css';

const FLOOR = 76;
const NAMES = 42;
const TILE = 58;
const GROUND = { share: 0.43, least: 250, most: 420 } as const;
/** with the shapes of another way, and both numbers */
const GROUND_TWO = { share: 0.5, least: 300, most: 480 } as const;
const TILES_TWO = { own: 50, tile: 42, gap: 6 } as const;
/** px; right of the landing arms are held out: of the width, and at least */
const BESIDE = { left: 150, right: 82, share: 0.12 } as const;
const LEAVES = 40;
/** of the width: the pictures and curves along time; four numbers need more on a narrow screen */
const TIME = { wide: 0.634, narrow: 0.565, from: 1160 } as const;
const BOB = 160;
/** px between labelled ticks */
const LABEL = 90;
/** px of a line; the rate's is 5 */
const LINE = 5;
/** px of a letter of a shape's name */
const LETTER = 11;
const AREA = { left: 66, width: 356, top: 40 } as const;

export function HallLayout() {
  document.documentElement.dataset.hall = '';
  onCleanup(() => delete document.documentElement.dataset.hall);
  const shell = useShell();
  const flight = useFlight();
  const cursor = useCursor();
  let root!: HTMLDivElement;
  let said!: HTMLElement;
  const size = useSize(() => root);
  const lineSize = useSize(() => said);
  const isLate = useIsLate();
  useChangeAnswer();
  const first = useFirstQuestionParts();
  const two = useBesideParts();
  const cut = useCut();
  const story = useFirstRows();
  const rows = useTouchRows(story.rows);
  const width = (): number => Math.max(size().width, 700);
  const timeWidth = (): number => Math.round(width() * (width() < TIME.from ? TIME.narrow : TIME.wide));
  const shared = (): number => Math.max(size().height, 600) - lineSize().height - FLOOR;
  const ground = (): number => {
    const { share, least, most } = two() ? GROUND_TWO : GROUND;
    return Math.round(Math.min(Math.max(shared() * share, least), most));
  };
  const airHeight = (): number => Math.max(shared() - ground(), 160);
  const axis = useAxis(flight.id, () => {
    const result = flight.result();
    const right = Math.max(BESIDE.right, Math.round(timeWidth() * BESIDE.share));
    return makeAxis(timeWidth(), result.flight.duration, BESIDE.left + leavingRoom(result, LEAVES), right);
  });
  const views = useUnrolledViews({
    axis,
    width: timeWidth,
    height: airHeight,
    margin: 10,
    scale: 150,
    place: { labelX: 62, ghosts: 4, labelSize: 22 },
  });
  const area = createMemo<HallTwo | undefined>(() => {
    const now = story.rows();
    if (now.kind !== 'oneAxis' || !now.hasArea) return undefined;
    const { axis, rate, moment } = now;
    const { frames } = flight.result();
    const beside = two()?.beside;
    if (beside && (beside.turn === 'twist') === (axis === 'long')) {
      const other = beside.result.frames;
      const rows = calcBesideRows(frames, other, cursor.at(), beside.turn);
      return { axis, filled: rows.own, dashed: rows.other, frames: [frames, other], letter: beside.letter };
    }
    return {
      axis,
      filled: { rate: rate.now, moment: moment.now },
      dashed: { rate: rate.takeoff, moment: moment.takeoff },
      frames: [frames],
      letter: undefined,
    };
  });
  const way = (panel: 'commands' | 'menu', word: string): JSX.Element => (
    <button type="button" class="plain" aria-haspopup="dialog" onClick={() => shell.openPanel(panel)}>
      {word}
    </button>
  );
  return (
    <div class="hall" ref={root}>
      <header class="hall-ways">
        {way('commands', commandTexts.find)}
        {way('menu', texts.bar.menu)}
      </header>
      <section class="line" ref={said} aria-label={texts.sentence.label}>
        <Sentence isLate={isLate()} />
        <Computing isLate={isLate()} />
        <AnswerLine>
          <Show when={first()}>{(parts) => <Dynamic component={parts().FirstQuestion} brief />}</Show>
        </AnswerLine>
        <CautionLine short />
      </section>
      <main>
        <Show when={size().width > 0 && lineSize().height > 0}>
          <section class="air" style={{ height: `${airHeight()}px` }}>
            <Stage width={timeWidth()} height={airHeight()} views={views()} timeAt={(x) => tOf(axis(), x)} />
            <div class="hall-right" style={{ width: `${width() - timeWidth()}px` }}>
              <Show when={story.rows().kind === 'twisting'}>
                <TiltTrio width={width() - timeWidth() - 20} height={airHeight()} hidden={false} whole />
              </Show>
              <Show when={area()}>
                {(one) => (
                  <div style={{ position: 'absolute', left: `${AREA.left}px`, top: `${AREA.top}px` }}>
                    <HallArea of={one()} width={AREA.width} height={airHeight() - AREA.top - 28} />
                  </div>
                )}
              </Show>
            </div>
          </section>
          <FloorBand axis={axis()} height={FLOOR} grip={BOB} label={LABEL}>
            <span class="hall-play">
              <PlayButton size={36} />
            </span>
            <LiveNumbers cut={cut()} />
          </FloorBand>
          <div class="touch-row" style={{ height: `${ground()}px` }}>
            <TouchGround
              axis={axis()}
              height={ground()}
              tile={TILE}
              two={TILES_TWO}
              nameHeight={NAMES}
              lineWidth={LINE}
              letter={LETTER}
              plots={rows.plots().slice(0, 1)}
              shapesTitle={texts.shapes.title}
            />
            <div class="hall-numbers" style={{ width: `${width() - timeWidth()}px` }}>
              <FirstNumbers story={story} />
              <p class="standing">{texts.standingCautionShort}</p>
            </div>
          </div>
          <div
            class="plumb"
            aria-hidden="true"
            style={{
              transform: `translate(${xOf(axis(), cursor.at())}px, ${airHeight()}px)`,
              height: `${FLOOR + ground()}px`,
            }}
          />
          <HallSpoken cut={cut()} story={story} />
        </Show>
      </main>
    </div>
  );
}
