/**
 * Other versions of a skill in the same picture: each a contour with dashes and a hatch of its own, its letter at the mass
 * centre, its path dashed alike. A, the document, stays solid and in front. A version is at its own time; `shiftS`
 * says how far that runs ahead of A's clock, so that both meet at take-off, apex or landing.
 */

import { type OutlineStyle, outlineItems } from './figure-outline.ts';
import { type PlacePoint, pathItems } from './flight-path.ts';
import type { StageFlight, StagePose } from './pose-frames.ts';
import type { FigurePlace } from './posed-look.ts';
import type { Dash, DrawItem } from './scene.ts';

type VersionLetter = 'B' | 'C' | 'D' | 'E' | 'F' | 'G' | 'H';

interface VersionStyle {
  readonly figure: OutlineStyle;
  readonly path: Dash;
}

/** Dashed, dotted, dash and dot: distinct without any colour. */
const VERSION_STYLES: Readonly<Record<VersionLetter, VersionStyle>> = {
  B: { figure: { hatchDeg: 45, dash: [4.5, 3] }, path: [5, 3] },
  C: { figure: { hatchDeg: 135, dash: [1.6, 2.4] }, path: [1.5, 3] },
  D: { figure: { hatchDeg: 90, dash: [7, 2.6, 1.6, 2.6] }, path: [7, 3, 1.5, 3] },
  E: { figure: { hatchDeg: 0, dash: [9, 5] }, path: [10, 5] },
  F: { figure: { hatchDeg: 22, dash: [3, 5] }, path: [3, 6] },
  G: { figure: { hatchDeg: 112, dash: [7, 2.6, 1.6, 2.6, 1.6, 2.6] }, path: [7, 3, 1.5, 3, 1.5, 3] },
  H: { figure: { hatchDeg: 67, dash: [2.5, 2.5, 6, 2.5] }, path: [2.5, 2.5, 10, 2.5] },
};

export interface OtherVersion {
  readonly letter: VersionLetter;
  readonly flight: StageFlight;
  /** the pose at its own time */
  readonly cursor: StagePose;
  /** its own time minus A's, s */
  readonly shiftS: number;
}

/** The place that names the version, for keys. */
export const versionsKey = (others: readonly OtherVersion[]): string =>
  others.map((o) => `${o.letter}${o.flight.key}@${o.shiftS.toFixed(4)}`).join(' ');

/** The first is in front of the rest. `place` is asked for each: the anchor is its own mass centre. `labelSize`: of the words of the picture, px. */
export function versionFigures(
  others: readonly OtherVersion[],
  place: (other: OtherVersion) => FigurePlace,
  labelSize = 0,
): DrawItem[] {
  return [...others].reverse().flatMap((other) => {
    const spot = place(other);
    return [
      ...versionOutline(other.letter, other.flight.body, other.cursor.frames, spot),
      letterItem(other.letter, spot.x, spot.y, Math.max(LETTER, labelSize - SMALLER)),
    ];
  });
}

/** Without its letter. */
export const versionOutline = (
  letter: VersionLetter,
  body: StageFlight['body'],
  frames: StagePose['frames'],
  place: FigurePlace,
): DrawItem[] => outlineItems(body, frames, place, VERSION_STYLES[letter].figure);

/** Paths of the others; `place` has A's time first. */
export function versionPaths(others: readonly OtherVersion[], place: PlacePoint): DrawItem[] {
  return [...others]
    .reverse()
    .flatMap(({ letter, flight, shiftS }) =>
      pathItems(flight, (t, x, y, z) => place(t - shiftS, x, y, z), VERSION_STYLES[letter].path),
    );
}

/** px, and how much smaller than the words of a picture with large ones */
const LETTER = 11;
const SMALLER = 2;

function letterItem(letter: VersionLetter, x: number, y: number, size: number): DrawItem {
  return {
    kind: 'text',
    x,
    y: y + 0.36 * size,
    text: letter,
    size,
    weight: 700,
    fill: 'ink',
    anchor: 'middle',
    halo: 'air',
    data: { version: letter },
  };
}
