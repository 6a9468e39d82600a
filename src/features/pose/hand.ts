/**
 * A hand at work on the figure: one end led from where it was when the gesture began, a key at the cursor (or the whole
 * held shape changed), the flight flown again at every move, one step when it ends. Kept for the bench, so that the
 * pictures above the floor and the tool share it.
 */

import { batch, createMemo, createSignal } from 'solid-js';
import { DEG } from '../../../sim/math/angles.ts';
import { calcGains } from '../../app/drag-plate.tsx';
import { keptState, type Page } from '../../app/page.ts';
import { wordJoint } from '../../app/say/body-words.ts';
import { adjustBlock } from '../../document/edits.ts';
import { type NamedDegrees, setPoseAt } from '../../document/pose-edits.ts';
import { type BlockSpan, findSpan } from '../../document/spans.ts';
import type { HeldBody } from '../../engine/pose.ts';
import type { FigureGrip } from '../../pictures/stage-input.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { poseTexts } from './words.ts';

type Sides = 'both' | 'one';
type Scope = 'key' | 'shape';
type View = FigureGrip['view_B'];

/** What a gesture shows while it runs. */
export interface Work {
  readonly end: string;
  /** the body as the gesture found it */
  readonly camera: HeldBody;
  readonly before: readonly number[];
  readonly lines: readonly string[];
  /** the end stops short of the place by this, m */
  readonly short: number;
}

export interface Gesture {
  /** screen px to the right and down, in a picture of this scale; `other` turns the choice of sides round */
  move(dx: number, dy: number, pxPerM: number, view: View, other: boolean): void;
  settle(): void;
  abandon(): void;
}

/** Most angles shown on the plate. */
const SHOWN = 2;

function makeHand(page: Page) {
  const { flight, cursor, services, doc } = page;
  const [sides, setSides] = createSignal<Sides>('both');
  const [scope, setScope] = createSignal<Scope>('key');
  const [work, setWork] = createSignal<Work>();
  const [said, setSaid] = createSignal('');

  /** the shape that is held at the cursor */
  const heldSpan = createMemo((): BlockSpan | undefined => {
    const found = findSpan(flight.spans(), cursor.at());
    return found?.held ? found.span : undefined;
  });

  const begin = (end: string): Gesture => {
    cursor.play.pause();
    const s = cursor.at();
    const mark = flight.result();
    const anchors = flight.anchors();
    const { posing } = services;
    const before = posing.anglesAt(mark, s);
    const camera = posing.hold(mark.flight.body, before);
    const block = scope() === 'shape' ? heldSpan()?.index : undefined;
    const { angles: named } = mark.flight.body;
    let changed: NamedDegrees = {};
    const wordLines = (deg: NamedDegrees, stopped: readonly string[]): string[] => {
      const was = (name: string): number => {
        const at = named.findIndex((a) => a.name === name || a.name === `${name}L`);
        return at < 0 ? 0 : before[at] * DEG;
      };
      const lines = Object.entries(deg)
        .map(([name, now]) => ({ name, from: was(name), now, by: Math.abs(now - was(name)) }))
        .sort((a, b) => b.by - a.by)
        .slice(0, SHOWN)
        .map(({ name, from, now }) => `${wordJoint(name)} ${formatNumber(from, 0)}° → ${formatNumber(now, 0)}°`);
      if (stopped.length > 0) lines.push(poseTexts.atEnd(wordJoint(stopped[0])));
      return lines;
    };
    return {
      move: (dx, dy, pxPerM, view, other) => {
        // a pose of another document's flight is none of this one
        if (!flight.edited()) return;
        const [a, b] = [dx / pxPerM, -dy / pxPerM];
        const along = (k: 0 | 1 | 2): number => a * view.right[k] + b * view.up[k];
        const led = posing.lead({
          result: mark,
          t: s,
          end,
          by_B: [along(0), along(1), along(2)],
          toward_B: view.toward,
          both: (sides() === 'both') !== other,
        });
        changed = led.changedDeg;
        let file = doc.begin();
        if (block === undefined) file = setPoseAt(file, s, changed, { anchors, kind: 'stop' });
        else for (const [name, deg] of Object.entries(changed)) file = adjustBlock(file, block, [name], deg);
        // one picture for both
        batch(() => {
          doc.draft(file);
          setWork({ end, camera, before, lines: wordLines(changed, led.stopped), short: led.short });
        });
      },
      settle: () => {
        const was = flight.before();
        const gains = was ? calcGains(was, flight.result().outline) : [];
        const lines = work()?.lines ?? [];
        setWork(undefined);
        if (Object.keys(changed).length === 0) {
          doc.abandon();
          return;
        }
        doc.settle(block === undefined ? poseTexts.moved(end) : poseTexts.shaped(end));
        setSaid(
          [poseTexts.ends[end] ?? end, ...lines, ...gains.map((g) => `${g.name} ${g.from} → ${g.to}`)].join(', '),
        );
      },
      abandon: () => {
        setWork(undefined);
        doc.abandon();
        setSaid(poseTexts.putBack);
      },
    };
  };

  /** Joint angles typed, or a pose from elsewhere: one step. */
  const put = (deg: NamedDegrees, title: string): void => {
    if (!flight.edited()) return;
    const anchors = flight.anchors();
    const block = scope() === 'shape' ? heldSpan()?.index : undefined;
    let file = doc.file();
    if (block === undefined) file = setPoseAt(file, cursor.at(), deg, { anchors, kind: 'stop' });
    else for (const [name, v] of Object.entries(deg)) file = adjustBlock(file, block, [name], v);
    doc.edit(file, title);
  };

  return { sides, setSides, scope, setScope, heldSpan, work, begin, put, said, setSaid };
}
export const useHand = keptState(makeHand);
