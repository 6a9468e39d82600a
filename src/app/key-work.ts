/**
 * Work on several keys at once, and on the pose at the cursor: picking, copying, pasting, mirroring, drawing out in time,
 * moving, taking out. What is picked are places in the document; when keys come or go it is forgotten.
 */

import { type Accessor, createMemo, createSignal } from 'solid-js';
import type { SkillFile } from '../../sim/index.ts';
import { withoutSide } from '../../sim/math/side.ts';
import type { KeyActions } from '../commands/actions.ts';
import { getTime } from '../document/key-order.ts';
import type { KeySource } from '../document/lanes.ts';
import { getSchedule } from '../document/phases.ts';
import {
  copyKeys,
  copyPose,
  getSourcesAt,
  getSourcesIn,
  type KeySpan,
  mirrorKeys,
  mirrorPose,
  moveSources,
  type NamedDegrees,
  pasteKeys,
  removeSources,
  scaleSources,
  setPoseAt,
} from '../document/pose-edits.ts';
import { resolveTime } from '../document/times.ts';
import { keyTexts } from './key-words.ts';
import { keptState, type Page } from './page.ts';
import { makeSaid } from './said.ts';

type Copied =
  | { readonly kind: 'pose'; readonly pose: NamedDegrees }
  | { readonly kind: 'span'; readonly span: KeySpan };

/** A change smaller than this, deg, is no change. */
const SAID = 0.05;
const nameOf = (s: KeySource): string => (s.kind === 'key' ? `k${s.index}` : `b${s.block}${s.side}`);
const countOf = (file: SkillFile): string => {
  const { keys = [], blocks = [] } = getSchedule(file);
  return `${keys.length} ${blocks.length}`;
};

interface KeyWork extends KeyActions {
  readonly picked: Accessor<readonly KeySource[]>;
  isPicked(source: KeySource): boolean;
  pick(sources: readonly KeySource[]): void;
  toggle(source: KeySource): void;
  /** first and last time of what is picked */
  readonly range: Accessor<readonly [number, number] | undefined>;
  setLane(id: string | undefined): void;
  readonly said: Accessor<string>;
}

export function makeKeyWork({ doc, flight, cursor, services }: Page): KeyWork {
  const [raw, setRaw] = createSignal<{ sources: readonly KeySource[]; count: string }>({ sources: [], count: '' });
  const [copied, setCopied] = createSignal<Copied>();
  const [said, setSaid] = makeSaid(doc, true);
  let lane: string | undefined;
  const picked = createMemo(() => (raw().count === countOf(doc.file()) ? raw().sources : []));
  const names = createMemo(() => new Set(picked().map(nameOf)));
  const pick = (sources: readonly KeySource[]): void => {
    setRaw({ sources, count: countOf(doc.file()) });
  };
  const timesOf = (file: SkillFile, sources: readonly KeySource[]): number[] =>
    sources.flatMap((s) => {
      const time = getTime(file, s);
      return time ? [resolveTime(time, flight.anchors())] : [];
    });
  const range = createMemo(() => {
    const times = timesOf(doc.file(), picked());
    return times.length > 0 ? ([Math.min(...times), Math.max(...times)] as const) : undefined;
  });
  /** Times are those of the flight: no document is edited by the flight of another. */
  const write = (file: SkillFile, title: string): void => {
    if (flight.edited()) doc.edit(file, title);
  };
  const keysPicked = (): readonly KeySource[] => picked().filter((s) => s.kind === 'key');
  const poseHere = (): NamedDegrees => {
    const { body } = flight.result().flight;
    return copyPose(body, services.posing.anglesAt(flight.result(), cursor.at()));
  };
  const putPose = (pose: NamedDegrees, title: string): void => {
    const here = poseHere();
    const changed = Object.fromEntries(
      Object.entries(pose).filter(([name, deg]) => name in here && Math.abs(deg - here[name]) > SAID),
    );
    if (Object.keys(changed).length === 0) return;
    write(setPoseAt(doc.file(), cursor.at(), changed, { anchors: flight.anchors(), kind: 'stop' }), title);
  };
  /** Puts keys in and picks them. */
  const putSpan = (base: SkillFile, span: KeySpan, s: number, title: string): void => {
    const anchors = flight.anchors();
    const file = pasteKeys(base, span, s, anchors);
    write(file, title);
    const wanted = new Set(span.keys.map(({ key }) => withoutSide(key.angle)));
    pick(
      getSourcesIn(doc.file(), s - 1e-3, s + span.lengthS + 1e-3, anchors).filter(
        (one) => one.kind === 'key' && wanted.has(withoutSide(getSchedule(doc.file()).keys?.[one.index].angle ?? '')),
      ),
    );
  };
  return {
    picked,
    range,
    said,
    isPicked: (source) => names().has(nameOf(source)),
    pick,
    toggle: (source) => {
      const name = nameOf(source);
      pick(names().has(name) ? picked().filter((s) => nameOf(s) !== name) : [...picked(), source]);
    },
    setLane: (id) => {
      lane = id;
    },
    hasPicked: () => picked().length > 0,
    hasKeysPicked: () => keysPicked().length > 0,
    hasSpan: () => {
      const r = range();
      return r !== undefined && r[1] - r[0] > 1e-6;
    },
    canPaste: () => copied() !== undefined,
    copy: () => {
      const keys = keysPicked();
      if (keys.length > 0) {
        setCopied({ kind: 'span', span: copyKeys(doc.file(), keys, flight.anchors()) });
        setSaid(keyTexts.copiedKeys(keys.length));
      } else {
        setCopied({ kind: 'pose', pose: poseHere() });
        setSaid(keyTexts.copiedPose(cursor.at().toFixed(2)));
      }
    },
    paste: () => {
      const what = copied();
      if (what?.kind === 'pose') putPose(what.pose, keyTexts.pastedPose);
      else if (what) putSpan(doc.file(), what.span, cursor.at(), keyTexts.pastedKeys);
    },
    mirror: () => {
      const { body } = flight.result().flight;
      const keys = keysPicked();
      if (keys.length === 0) return putPose(mirrorPose(body, poseHere()), keyTexts.mirroredPose);
      const file = doc.file();
      const span = copyKeys(file, keys, flight.anchors());
      const first = Math.min(...timesOf(file, keys));
      putSpan(removeSources(file, keys), mirrorKeys(body, span), first, keyTexts.mirroredKeys);
    },
    scale: (factor) => {
      const r = range();
      if (r) write(scaleSources(doc.file(), picked(), r[0], factor, flight.anchors()), keyTexts.scaled);
    },
    remove: () => write(removeSources(doc.file(), picked()), keyTexts.removed(keysPicked().length)),
    pickAll: () => {
      const one = flight.lanes().find((l) => l.id === lane);
      pick(one ? one.keys.map((k) => k.source) : getSourcesIn(doc.file(), -99, 99, flight.anchors()));
      setSaid(keyTexts.pickedCount(picked().length));
    },
    pickHere: () => {
      pick(getSourcesAt(doc.file(), cursor.at(), flight.anchors()));
      setSaid(keyTexts.pickedCount(picked().length));
    },
    pickNone: () => pick([]),
    nudge: (byS) => write(moveSources(doc.file(), picked(), byS, flight.anchors()), keyTexts.movedKeys),
  };
}

export const useKeys = keptState(makeKeyWork);
