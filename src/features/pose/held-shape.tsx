/** The shape at the cursor: when it is held, how long the move into it takes, the arms' way, and hands that hold on. */

import { createMemo, For, Show } from 'solid-js';
import type { SkillFile } from '../../../sim/index.ts';
import { keyTexts } from '../../app/key-words.ts';
import { ARM_PATHS, MOVE, useLaying } from '../../app/laying.ts';
import { useCursor, useDocument, useFlight, useServices } from '../../app/page.ts';
import { wordCaution } from '../../app/say/caution-words.ts';
import { SpanFields } from '../../app/span-fields.tsx';
import { texts } from '../../app/words.ts';
import { changeBlock, removeBlock, setBlockEdge } from '../../document/edits.ts';
import { dropHold, findHold, type HandHold, type HoldOn, setHold } from '../../document/hand-holds.ts';
import { moveBlock, setMoveTime } from '../../document/lay-shape.ts';
import { openBlock } from '../../document/open-block.ts';
import { getSchedule } from '../../document/phases.ts';
import { type BlockSpan, findSpan, limitEdge } from '../../document/spans.ts';
import { moveTime } from '../../document/times.ts';
import { Choice } from '../../ui/choice.tsx';
import { formatNumber } from '../../ui/numbers.ts';
import { SecondsField } from '../../ui/seconds-field.tsx';
import { poseTexts } from './words.ts';

const t = texts.shapes;
const HOLDS: readonly (HoldOn | 'free')[] = ['free', 'shin', 'behindKnee'];
const HANDS: readonly HandHold['hand'][] = ['both', 'L', 'R'];
/** A hand nearer than this to its place has it, m. */
const THERE = 0.005;

export function HeldShape() {
  const flight = useFlight();
  const cursor = useCursor();
  const found = createMemo(() => findSpan(flight.spans(), cursor.at()));
  return (
    <Show when={found()} fallback={<p class="quiet">{poseTexts.noShape}</p>}>
      {(f) => <One span={f().span} held={f().held} />}
    </Show>
  );
}

function One(props: { span: BlockSpan; held: boolean }) {
  const doc = useDocument();
  const flight = useFlight();
  const services = useServices();
  const cursor = useCursor();
  const laying = useLaying();
  const index = (): number => props.span.index;
  const block = () => getSchedule(doc.file()).blocks?.[index()];
  const former = (): BlockSpan | undefined => flight.spans()[index() - 1];
  const edit = (file: SkillFile, title: string): void => doc.editSoon(file, title);
  const edge = (side: 'from' | 'to', s: number): void => {
    const b = block();
    if (!b) return;
    const at = moveTime(b[side], limitEdge(flight.spans(), index(), side, s), flight.anchors());
    edit(setBlockEdge(doc.file(), index(), side, at), t.retime(props.span.title));
  };
  const names = createMemo(() =>
    Object.entries(laying.shapes())
      .map(([id, { title }]) => ({ id, title }))
      .sort((a, b) => a.title.localeCompare(b.title)),
  );
  const hold = createMemo(() => findHold(doc.file(), index()));
  const isHuman = (): boolean => services.posing.ends(flight.result()).length > 0;
  const setOn = (on: HoldOn | 'free', hand: HandHold['hand']): void => {
    const file = doc.file();
    const title = poseTexts.handsOf(props.span.title);
    edit(on === 'free' ? dropHold(file, index()) : setHold(file, index(), { on, hand }, flight.anchors()), title);
  };
  const gaps = createMemo(() => {
    const at = hold()?.contact;
    if (at === undefined || flight.before()) return [];
    return services.posing.handGaps(flight.result()).filter((gap) => gap.contact === at);
  });
  const overlaps = createMemo(() =>
    flight
      .cautions()
      .filter((one) => one.kind === 'overlap' && one.t >= (former()?.to ?? 0) - 0.01 && one.t <= props.span.to + 0.01),
  );
  const open = (): void => {
    const { keys, base } = services.posing.blockKeys(flight.result(), index());
    edit(openBlock(doc.file(), index(), keys, base, flight.anchors()), poseTexts.openedTitle(props.span.title));
  };
  return (
    <div class="held-shape">
      <label class="choose">
        <span class="spoken">{poseTexts.tabs.held}</span>
        <select value={props.span.shape} onChange={(e) => laying.replace(index(), e.currentTarget.value)}>
          <For each={names()}>{({ id, title }) => <option value={id}>{title}</option>}</For>
        </select>
        <span class="quiet">{props.held ? poseTexts.heldNow : poseTexts.movingNow}</span>
      </label>
      <div class="held-times">
        <SpanFields from={props.span.from} to={props.span.to} change={edge} />
        <Show when={former()}>
          {(before) => (
            <SecondsField
              label={keyTexts.moveTakes}
              value={props.span.from - before().to}
              min={MOVE.least}
              max={Math.max(MOVE.most, props.span.from - before().from)}
              onChange={(v) => edit(setMoveTime(doc.file(), index(), v, flight.anchors()), t.retime(props.span.title))}
            />
          )}
        </Show>
        <SecondsField
          label={poseTexts.wholeAt}
          value={props.span.from}
          onChange={(v) =>
            edit(moveBlock(doc.file(), index(), v - props.span.from, flight.anchors()), t.retime(props.span.title))
          }
        />
      </div>
      <Show when={former()}>
        <Choice
          legend={t.arms}
          names={ARM_PATHS}
          words={poseTexts.paths}
          chosen={block()?.arms ?? 'direct'}
          choose={(arms) => edit(changeBlock(doc.file(), index(), { arms }), t.armsOf(props.span.title))}
        />
      </Show>
      <Show when={isHuman()}>
        <Choice
          legend={poseTexts.hands}
          names={HOLDS}
          words={poseTexts.holds}
          chosen={hold()?.hold.on ?? 'free'}
          choose={(on) => setOn(on, hold()?.hold.hand ?? 'both')}
        />
        <Show when={hold()}>
          {(h) => (
            <Choice
              legend={poseTexts.whichHand}
              names={HANDS}
              words={poseTexts.whichHands}
              chosen={h().hold.hand}
              choose={(hand) => setOn(h().hold.on, hand)}
            />
          )}
        </Show>
        <ul class="report">
          <For each={gaps()}>
            {(gap) => (
              <li>
                <Show when={gap.gap > THERE} fallback={poseTexts.reaches(gap.side, hold()?.hold.on ?? 'shin')}>
                  <b>{texts.caution.word}</b>{' '}
                  {poseTexts.gap(gap.side, formatNumber(gap.gap * 100, 1), hold()?.hold.on ?? 'shin')}{' '}
                  <button type="button" class="link" onClick={() => cursor.set(gap.t)}>
                    {texts.caution.go(formatNumber(gap.t, 2))}
                  </button>
                </Show>
              </li>
            )}
          </For>
          <For each={overlaps()}>
            {(one) => (
              <li>
                <b>{texts.caution.word}</b> {wordCaution(one)}{' '}
                <button type="button" class="link" onClick={() => cursor.set(one.t)}>
                  {texts.caution.go(formatNumber(one.t, 2))}
                </button>
              </li>
            )}
          </For>
        </ul>
      </Show>
      <p class="held-does">
        <button type="button" title={poseTexts.openHint} onClick={open}>
          {poseTexts.openLanes}
        </button>
        <Show when={props.span.changed}>
          <button
            type="button"
            onClick={() =>
              edit(changeBlock(doc.file(), index(), { adjustDeg: undefined }), t.asShape(props.span.title))
            }
          >
            {t.plain}
          </button>
        </Show>
        <button type="button" onClick={() => edit(removeBlock(doc.file(), index()), t.removed(props.span.title))}>
          {t.remove}
        </button>
      </p>
    </div>
  );
}
