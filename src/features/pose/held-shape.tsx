/** The shape at the cursor: when it is held, how long the move into it takes, the arms' way, and hands that hold on. */

import { createMemo, For, Show } from 'solid-js';
import type { SkillFile } from '../../../sim/index.ts';
import { keyTexts } from '../../app/key-words.ts';
import { type ArmPath, MOVE, useLaying } from '../../app/laying.ts';
import { useCursor, useDocument, useFlight, useServices } from '../../app/page.ts';
import { wordCaution } from '../../app/say/caution-words.ts';
import { texts } from '../../app/words.ts';
import { changeBlock, removeBlock, setBlockEdge } from '../../document/edits.ts';
import { dropHold, findHold, type HandHold, type HoldOn, setHold } from '../../document/hand-holds.ts';
import { moveBlock, setMoveTime } from '../../document/lay-shape.ts';
import { openBlock } from '../../document/open-block.ts';
import { getSchedule } from '../../document/phases.ts';
import { type BlockSpan, findSpan, limitEdge } from '../../document/spans.ts';
import { moveTime } from '../../document/times.ts';
import { NumberField } from '../../ui/number-field.tsx';
import { formatNumber } from '../../ui/numbers.ts';
import { poseTexts } from './words.ts';

const t = texts.shapes;
const PATHS: readonly ArmPath[] = ['direct', 'front', 'side'];
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
  const edit = (file: SkillFile, title: string): void => doc.edit(file, title);
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
        <NumberField
          label={t.from}
          unit="s"
          value={props.span.from}
          min={-5}
          max={20}
          step={0.01}
          decimals={2}
          onChange={(v) => edge('from', v)}
        />
        <NumberField
          label={t.to}
          unit="s"
          value={props.span.to}
          min={-5}
          max={20}
          step={0.01}
          decimals={2}
          onChange={(v) => edge('to', v)}
        />
        <Show when={former()}>
          {(before) => (
            <NumberField
              label={keyTexts.moveTakes}
              unit="s"
              value={props.span.from - before().to}
              min={MOVE.least}
              max={Math.max(MOVE.most, props.span.from - before().from)}
              step={0.01}
              decimals={2}
              onChange={(v) => edit(setMoveTime(doc.file(), index(), v, flight.anchors()), t.retime(props.span.title))}
            />
          )}
        </Show>
        <NumberField
          label={poseTexts.wholeAt}
          unit="s"
          value={props.span.from}
          min={-5}
          max={20}
          step={0.01}
          decimals={2}
          onChange={(v) =>
            edit(moveBlock(doc.file(), index(), v - props.span.from, flight.anchors()), t.retime(props.span.title))
          }
        />
      </div>
      <Show when={former()}>
        <fieldset class="choice">
          <legend>{t.arms}</legend>
          <For each={PATHS}>
            {(path) => (
              <button
                type="button"
                aria-pressed={(block()?.arms ?? 'direct') === path}
                onClick={() => edit(changeBlock(doc.file(), index(), { arms: path }), t.armsOf(props.span.title))}
              >
                {poseTexts.paths[path]}
              </button>
            )}
          </For>
        </fieldset>
      </Show>
      <Show when={isHuman()}>
        <fieldset class="choice">
          <legend>{poseTexts.hands}</legend>
          <For each={HOLDS}>
            {(on) => (
              <button
                type="button"
                aria-pressed={(hold()?.hold.on ?? 'free') === on}
                onClick={() => setOn(on, hold()?.hold.hand ?? 'both')}
              >
                {poseTexts.holds[on]}
              </button>
            )}
          </For>
        </fieldset>
        <Show when={hold()}>
          {(h) => (
            <fieldset class="choice">
              <legend>{poseTexts.whichHand}</legend>
              <For each={HANDS}>
                {(which) => (
                  <button
                    type="button"
                    aria-pressed={h().hold.hand === which}
                    onClick={() => setOn(h().hold.on, which)}
                  >
                    {poseTexts.whichHands[which]}
                  </button>
                )}
              </For>
            </fieldset>
          )}
        </Show>
        <ul class="told">
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
