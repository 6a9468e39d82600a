/**
 * Ghosts: poses at other instants, for context. Each is built once at the origin and only moved; which of them are shown is
 * chosen for reading (ghost-choice.ts), since any instant can be seen in full by going there.
 */
import type { Body } from '../../sim/index.ts';
import { figureItems } from './figure.ts';
import type { StageFlight, StagePose } from './pose-frames.ts';
import type { GroupItem, Layer, Token } from './scene.ts';
import type { View } from './view.ts';

interface GhostPlace {
  readonly view: View;
  readonly scale: number;
  /** names the view in keys */
  readonly name: string;
  readonly gap?: Token;
  readonly rough?: boolean;
  at(pose: StagePose): readonly [number, number];
}

/** Built figures of one flight in one view, by index: kept as long as flight, scale and view stay. */
const built = new WeakMap<StagePose, Map<string, GroupItem['items']>>();

function ghostItems(body: Body, pose: StagePose, place: GhostPlace): GroupItem['items'] {
  const v = place.view;
  const key = `${place.scale} ${place.gap ?? ''} ${place.rough} ${v.right} ${v.up}`;
  let views = built.get(pose);
  if (!views) {
    views = new Map();
    built.set(pose, views);
  }
  let items = views.get(key);
  if (!items) {
    items = figureItems(body, pose.frames, {
      view: place.view,
      scale: place.scale,
      anchor: pose.p_WScm_W,
      x: 0,
      y: 0,
      ...(place.gap ? { gap: place.gap } : {}),
      rough: place.rough,
    });
    if (views.size > 6) views.clear();
    views.set(key, items);
  }
  return items;
}

/** The layer of these poses of the flight's candidates. */
export function ghostLayer(flight: StageFlight, shown: readonly StagePose[], place: GhostPlace): Layer {
  const stamp = `${flight.key} ${place.name} ${place.scale}`;
  const items = shown.map((pose): GroupItem => {
    const [x, y] = place.at(pose);
    return {
      kind: 'group',
      ghost: true,
      key: `${stamp} ${pose.t}`,
      x,
      y,
      items: ghostItems(flight.body, pose, { ...place, rough: flight.rough }),
      hit: `ghost:${flight.ghosts.indexOf(pose)}`,
      data: { t: pose.t },
    };
  });
  const where = items.map((item) => `${item.x},${item.y}`).join(' ');
  return { name: 'ghosts', items, key: `${stamp} ${shown.map(({ t }) => t).join(',')} ${where}` };
}
