/**
 * Work on several keys at once, and on the pose at the cursor: picking, copying, pasting, mirroring, drawing out in time,
 * moving, taking out. What is picked are places in the document; when keys come or go it is forgotten.
 */

import { type Accessor, createMemo, createSignal } from 'solid-js';
import type { SkillFile } from '../../sim/index.ts';
import { withoutSide } from '../../sim/math/side.ts';
import type { KeyActions } from '../commands/actions.ts';
import { getTime } from '../document/key-order.ts';
import type { KeySource, Lane } from '../document/lanes.ts';
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
import { type AnchorSeconds, resolveTime } from '../document/times.ts';
import type { FlightResult } from '../engine/result.ts';
import { keyTexts } from './key-words.ts';
import type { BenchPorts } from './ports.ts';

/** What the work needs of the bench. */
export interface KeyHost {
  readonly ports: Pick<BenchPorts, 'posing'>;
  readonly file: Accessor<SkillFile>;
  readonly result: Accessor<FlightResult>;
  readonly anchors: Accessor<AnchorSeconds>;
  readonly lanes: Accessor<Lane[]>;
  readonly cursor: Accessor<number>;
  edit(file: SkillFile, title: string): void;
}

type Copied =
  | { readonly kind: 'pose'; readonly pose: NamedDegrees }
  | { readonly kind: 'span'; readonly span: KeySpan };

/** A change smaller than this, deg, is no change. */
const SAID = 0.05;
const nameOf = (s: KeySource): string => (s.kind === 'key' ? `k${s.index}` : `b${s.block}${s.side}`);
const countOf = ({ schedule }: SkillFile): string => `${schedule.keys?.length ?? 0} ${schedule.blocks?.length ?? 0}`;

export interface KeyWork extends KeyActions {
  readonly picked: Accessor<readonly KeySource[]>;
  isPicked(source: KeySource): boolean;
  pick(sources: readonly KeySource[]): void;
  toggle(source: KeySource): void;
  /** first and last time of what is picked */
  readonly range: Accessor<readonly [number, number] | undefined>;
  setLane(id: string | undefined): void;
  readonly said: Accessor<string>;
}

export function makeKeyWork(host: KeyHost): KeyWork {
  const [raw, setRaw] = createSignal<{ sources: readonly KeySource[]; count: string }>({ sources: [], count: '' });
  const [copied, setCopied] = createSignal<Copied>();
  // the same words again are news as well
  const [said, setSaid] = createSignal('', { equals: false });
  let lane: string | undefined;
  const picked = createMemo(() => (raw().count === countOf(host.file()) ? raw().sources : []));
  const names = createMemo(() => new Set(picked().map(nameOf)));
  const pick = (sources: readonly KeySource[]): void => {
    setRaw({ sources, count: countOf(host.file()) });
  };
  const timesOf = (file: SkillFile, sources: readonly KeySource[]): number[] =>
    sources.flatMap((s) => {
      const time = getTime(file, s);
      return time ? [resolveTime(time, host.anchors())] : [];
    });
  const range = createMemo(() => {
    const times = timesOf(host.file(), picked());
    return times.length > 0 ? ([Math.min(...times), Math.max(...times)] as const) : undefined;
  });
  const keysPicked = (): readonly KeySource[] => picked().filter((s) => s.kind === 'key');
  const poseHere = (): NamedDegrees => {
    const { body } = host.result().flight;
    return copyPose(body, host.ports.posing.anglesAt(host.result(), host.cursor()));
  };
  const putPose = (pose: NamedDegrees, title: string): void => {
    const here = poseHere();
    const changed = Object.fromEntries(
      Object.entries(pose).filter(([name, deg]) => name in here && Math.abs(deg - here[name]) > SAID),
    );
    if (Object.keys(changed).length === 0) return;
    host.edit(setPoseAt(host.file(), host.cursor(), changed, { anchors: host.anchors(), kind: 'stop' }), title);
  };
  /** Puts keys in and picks them. */
  const putSpan = (base: SkillFile, span: KeySpan, s: number, title: string): void => {
    const anchors = host.anchors();
    const file = pasteKeys(base, span, s, anchors);
    host.edit(file, title);
    const wanted = new Set(span.keys.map(({ key }) => withoutSide(key.angle)));
    pick(
      getSourcesIn(host.file(), s - 1e-3, s + span.lengthS + 1e-3, anchors).filter(
        (one) => one.kind === 'key' && wanted.has(withoutSide(host.file().schedule.keys?.[one.index].angle ?? '')),
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
        setCopied({ kind: 'span', span: copyKeys(host.file(), keys, host.anchors()) });
        setSaid(keyTexts.copiedKeys(keys.length));
      } else {
        setCopied({ kind: 'pose', pose: poseHere() });
        setSaid(keyTexts.copiedPose(host.cursor().toFixed(2)));
      }
    },
    paste: () => {
      const what = copied();
      if (what?.kind === 'pose') putPose(what.pose, keyTexts.pastedPose);
      else if (what) putSpan(host.file(), what.span, host.cursor(), keyTexts.pastedKeys);
    },
    mirror: () => {
      const { body } = host.result().flight;
      const keys = keysPicked();
      if (keys.length === 0) return putPose(mirrorPose(body, poseHere()), keyTexts.mirroredPose);
      const file = host.file();
      const span = copyKeys(file, keys, host.anchors());
      const first = Math.min(...timesOf(file, keys));
      putSpan(removeSources(file, keys), mirrorKeys(body, span), first, keyTexts.mirroredKeys);
    },
    scale: (factor) => {
      const r = range();
      if (r) host.edit(scaleSources(host.file(), picked(), r[0], factor, host.anchors()), keyTexts.scaled);
    },
    remove: () => host.edit(removeSources(host.file(), picked()), keyTexts.removed(keysPicked().length)),
    pickAll: () => {
      const one = host.lanes().find((l) => l.id === lane);
      pick(one ? one.keys.map((k) => k.source) : getSourcesIn(host.file(), -99, 99, host.anchors()));
      setSaid(keyTexts.pickedCount(picked().length));
    },
    pickHere: () => {
      pick(getSourcesAt(host.file(), host.cursor(), host.anchors()));
      setSaid(keyTexts.pickedCount(picked().length));
    },
    pickNone: () => pick([]),
    nudge: (byS) => host.edit(moveSources(host.file(), picked(), byS, host.anchors()), keyTexts.movedKeys),
  };
}
