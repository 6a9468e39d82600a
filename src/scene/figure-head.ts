/** The head as it is drawn: face with an edge and eyes in front, hair and its knot behind, the neck under both. */
import { hullOf, inflate } from './blobs.ts';
import { faceContour } from './head-look.ts';
import type { HeadLook, LookPart } from './look.ts';
import { boldness, edgeWidth, facing, fill, gapWidth, type PosedLook } from './posed-look.ts';
import type { DrawItem, Points } from './scene.ts';

/** Under these px per metre eyes and the line round the knot would only grey the head. */
const DETAILS_FROM = 50;
/** Cosine to the eye of ours from which one of the face is drawn: the far one of a quarter view would sit on the edge of the face. */
const FULLY = 0.4;
/** The edge of a face against that of a limb. */
const FACE_EDGE = 0.75;

export function drawHead(posed: PosedLook, part: LookPart, items: DrawItem[]): void {
  const { look, place, projected, frames } = posed;
  const head = look.head;
  if (!head) return;
  const hull = (indices: readonly number[]): Points => hullOf(projected, indices, place.rough);
  const grow = boldness(place.scale);
  const bold = (indices: readonly number[]): Points => inflate(hull(indices), grow);
  const neck = hull(head.neck);
  const chin = bold(head.chin);
  const jaw = bold(head.jaw);
  const knot = bold(head.knot);
  const front = facing(frames, head.segment, 0, place.view);
  const gap = gapWidth(place.scale);
  items.push(
    fill(
      [neck, chin, jaw, knot].map((contour) => inflate(contour, gap)),
      place.gap ?? 'air',
    ),
  );
  if (front >= 0) items.push(fill([knot], 'hair', place, part));
  const pale = front > -0.35 ? [chin, jaw] : front > -0.5 ? [jaw] : [];
  const edge = -edgeWidth(place.scale) * FACE_EDGE;
  // the neck passes into the neckline without an edge; the face has one, against the air and against the neck
  items.push(fill([neck], 'skin', place, part));
  if (pale.length > 0) {
    items.push(fill(pale, 'limb-line'));
    items.push(
      fill(
        pale.map((contour) => inflate(contour, edge)),
        'skin',
        place,
        part,
      ),
    );
  }
  items.push(fill([bold([head.skull])], 'hair', place, part));
  const face = faceContour(head, projected, frames, place, grow, place.scale < 110 ? 10 : 20);
  if (face) items.push(fill(front > -0.2 ? [face, inflate(jaw, edge)] : [face], 'skin'));
  if (place.scale >= DETAILS_FROM && face) drawEyes(posed, head, items);
  if (front >= 0) return;
  // on the back of the head the knot has a line round it
  if (front < -0.3 && place.scale >= DETAILS_FROM) items.push(fill([inflate(knot, 0.5 * gap)], place.gap ?? 'air'));
  items.push(fill([knot], 'hair', place, part));
}

/** Both from in front, one in profile: they say where the head looks. */
function drawEyes({ projected, frames, place }: PosedLook, head: HeadLook, items: DrawItem[]): void {
  const R = frames.R_WS;
  const m = 9 * head.segment;
  const seen = head.eyes.filter(({ normal: [x, y, z] }) => {
    const along = (i: number): number => x * R[m + i] + y * R[m + i + 1] + z * R[m + i + 2];
    const [tx, ty, tz] = place.view.toward;
    return along(0) * tx + along(3) * ty + along(6) * tz > FULLY;
  });
  if (seen.length > 0)
    items.push(
      fill(
        seen.map(({ blob }) => hullOf(projected, [blob], place.rough)),
        'hair',
      ),
    );
}
