/** From above, under the side view and on the same metres. */
import { apparatusItems } from './apparatus-items.ts';
import { figureItems } from './figure.ts';
import { pathItems } from './flight-path.ts';
import { readableGhosts } from './ghost-choice.ts';
import { ghostLayer } from './ghosts.ts';
import type { StageFlight, StagePose } from './pose-frames.ts';
import type { Scene } from './scene.ts';
import { type ScaleWindow, sideOrigin } from './side-scene.ts';
import { type OtherVersion, versionFigures, versionPaths, versionsKey } from './version-ghost.ts';
import { topView } from './view.ts';

interface TopSceneInput {
  readonly flight: StageFlight;
  readonly cursor: StagePose;
  /** floorY is here the px of Z = 0 from the top */
  readonly window: ScaleWindow;
  readonly others?: readonly OtherVersion[];
}

export function topScene({ flight, cursor, window: w, others = [] }: TopSceneInput): Scene {
  const view = topView(flight.v_WScm_W0[0]);
  const x0 = sideOrigin(flight, w);
  const point = (x: number, z: number): readonly [number, number] => [
    x0 + view.right[0] * x * w.pxPerM,
    w.floorY - view.up[2] * z * w.pxPerM,
  ];
  const at = (pose: StagePose): readonly [number, number] => point(pose.p_WScm_W[0], pose.p_WScm_W[2]);
  const place = { view, scale: w.pxPerM };
  const [x, y] = at(cursor);
  const sight = { ...place, anchor: cursor.p_WScm_W, x, y };
  // only take-off and landing: between them the poses lie on each other
  const ends = w.ghosts === 0 ? [] : [flight.ghosts[0], flight.ghosts[flight.ghosts.length - 1]];
  const apparatus = apparatusItems(flight.apparatus.pieces, {
    view,
    pxPerM: w.pxPerM,
    width: w.width,
    height: w.height,
    at: (u, v) => [x0 + u * w.pxPerM, w.floorY - v * w.pxPerM],
  });
  return {
    width: w.width,
    height: w.height,
    background: 'air',
    layers: [
      {
        name: 'ground',
        items: [...apparatus.behind, ...apparatus.front],
        key: `top ${flight.key} ${JSON.stringify(w)}`,
      },
      ghostLayer(flight, readableGhosts(ends, cursor, { ...place, at, most: 2 }), { ...place, name: 'top', at }),
      {
        name: 'path',
        items: [
          ...versionPaths(others, (_t, px, _y, pz) => point(px, pz)),
          ...pathItems(flight, (_t, px, _y, pz) => point(px, pz)),
        ],
        key: `top ${flight.key} ${versionsKey(others)} ${JSON.stringify(w)}`,
      },
      {
        name: 'figure',
        items: [
          ...versionFigures(others, ({ cursor: c }) => {
            const [ox, oy] = at(c);
            return { ...place, anchor: c.p_WScm_W, x: ox, y: oy };
          }),
          ...figureItems(flight.body, cursor.frames, { ...sight, hit: 'figure' }),
        ],
        sight,
      },
    ],
    notes: [],
  };
}
