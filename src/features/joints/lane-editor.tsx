/** The open lane's typed side: the chosen key's time and angle, what it is counted from, whether the joint stops there. */

import { createMemo, Show } from 'solid-js';
import type { FileTime } from '../../../sim/index.ts';
import { DEG } from '../../../sim/math/angles.ts';
import { useCursor, useDocument, useFlight } from '../../app/page.ts';
import { calcPlace, readAt } from '../../app/plot/readout.ts';
import { wordJoint } from '../../app/say/body-words.ts';
import { addKey, changeBlock, changeKey, removeKey } from '../../document/edits.ts';
import type { Lane } from '../../document/lanes.ts';
import { getSchedule } from '../../document/phases.ts';
import { moveTime } from '../../document/times.ts';
import { Choice } from '../../ui/choice.tsx';
import { Icon } from '../../ui/icon.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { SecondsField } from '../../ui/seconds-field.tsx';
import { limitKey, moveKey } from './lane-keys.tsx';
import { laneTexts } from './words.ts';

const t = laneTexts;
const ANCHORS = ['takeoff', 'apex', 'touchdown'] as const;
const KINDS = ['stop', 'pass'] as const;

export function LaneEditor(props: {
  lane: Lane;
  chosen: number | undefined;
  choose: (index: number) => void;
  close: () => void;
}) {
  const flight = useFlight();
  const doc = useDocument();
  const cursor = useCursor();
  const label = (): string => wordJoint(props.lane.id);
  const index = (): number => props.chosen ?? -1;
  const key = createMemo(() => props.lane.keys[index()]);
  const anchor = createMemo((): FileTime | undefined => {
    const source = key()?.source;
    const file = flight.edited();
    if (!source || !file) return undefined;
    const schedule = getSchedule(file);
    return source.kind === 'key' ? schedule.keys?.[source.index]?.at : schedule.blocks?.[source.block]?.[source.side];
  });
  const setAnchor = (name: FileTime['anchor']): void => {
    const k = key();
    if (!k) return;
    const time = moveTime({ anchor: name, s: 0 }, k.t, flight.anchors());
    const file = doc.file();
    const { source } = k;
    const next =
      source.kind === 'key'
        ? changeKey(file, source.index, { at: time })
        : changeBlock(file, source.block, { [source.side]: time });
    doc.edit(next, t.anchored(label()));
  };
  const addHere = (): void => {
    const lane = props.lane;
    const { frames, skill } = flight.result();
    const deg = Math.round(
      readAt(frames.angles, calcPlace(frames, cursor.at()), skill.body.angles.length, lane.column) * DEG,
    );
    const at = { anchor: 'takeoff' as const, s: Math.round(cursor.at() * 1000) / 1000 };
    doc.edit(addKey(doc.file(), { angle: lane.id, at, deg, kind: 'stop' }), t.added(label()));
  };
  return (
    <div class="lane-editor">
      <p class="lane-editor-head">
        <button type="button" class="plain small" onClick={addHere}>
          {t.addHere}
        </button>
        <button type="button" class="plain small" onClick={() => props.close()}>
          {t.close}
        </button>
      </p>
      <Show when={props.lane.keys.length > 0}>
        <p class="key-steps">
          <button
            type="button"
            class="square"
            aria-label={t.before}
            disabled={index() <= 0}
            onClick={() => props.choose(index() - 1)}
          >
            <Icon name="back" size={14} />
          </button>
          {t.step(index() < 0 ? '–' : String(index() + 1), String(props.lane.keys.length))}
          <button
            type="button"
            class="square"
            aria-label={t.after}
            disabled={index() >= props.lane.keys.length - 1}
            onClick={() => props.choose(index() + 1)}
          >
            <Icon name="on" size={14} />
          </button>
        </p>
      </Show>
      <Show when={key()} fallback={<p class="quiet">{t.chooseKey}</p>}>
        {(k) => (
          <>
            <div class="lane-cells">
              <SecondsField
                compact
                label={t.time}
                value={k().t}
                min={-2}
                onChange={(v) => {
                  const s = limitKey(flight, props.lane, index(), v);
                  doc.edit(moveKey(doc.file(), flight, props.lane, k(), s, k().deg), t.moved(label()));
                }}
              />
              <NumberField
                compact
                label={t.angle}
                unit="°"
                value={k().deg}
                min={Math.round(props.lane.rangeDeg[0])}
                max={Math.round(props.lane.rangeDeg[1])}
                step={1}
                decimals={0}
                onChange={(v) => doc.edit(moveKey(doc.file(), flight, props.lane, k(), k().t, v), t.moved(label()))}
              />
            </div>
            <Choice legend={t.counted} names={ANCHORS} words={t.anchors} chosen={anchor()?.anchor} choose={setAnchor} />
            <Show when={k().source.kind === 'key' && k().source} fallback={<p class="quiet">{t.edgeOf}</p>}>
              {(source) => (
                <Choice
                  legend={t.atKey}
                  names={KINDS}
                  words={t.kinds}
                  chosen={k().kind}
                  choose={(kind) => {
                    const s = source();
                    if (s && s.kind === 'key')
                      doc.edit(changeKey(doc.file(), s.index, { kind }), t.stopsPasses(label()));
                  }}
                >
                  <button
                    type="button"
                    onClick={() => {
                      const s = source();
                      if (s && s.kind === 'key') doc.edit(removeKey(doc.file(), s.index), t.removed(label()));
                    }}
                  >
                    {t.remove}
                  </button>
                </Choice>
              )}
            </Show>
          </>
        )}
      </Show>
    </div>
  );
}
