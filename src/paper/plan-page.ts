/** The filming plan on one page: A4 on its side, black and grey. Sentence, the camera's own view, from above, a table, what to lay out and whom to ask. */
import type { ExpectedErrors, FilmingPlan } from '../../sim/index.ts';
import {
  ASK_FIRST,
  fastestOf,
  marksOf,
  mostHidden,
  ONE_CAMERA,
  PLAIN_FILMING,
  roomSize,
  wordFilming,
  wordJoint,
  wordLines,
  wordPixels,
  wordShare,
  wordShutter,
} from '../../sim/words/filming-words.ts';
import { figureItems } from '../scene/figure.ts';
import { ownNow, ownRoom, ownStill, planView } from '../scene/filmed-scene.ts';
import { ghostTimes } from '../scene/pose-frames.ts';
import type { View } from '../scene/view.ts';
import { type PaperPage, PER_MM, pageSvg, type Typeface } from './page-svg.ts';
import type { PaperFlight } from './paper-flight.ts';
import { drawn } from './paper-ink.ts';
import { sideMarkup } from './plan-side.ts';
import { BOLD, fitText, linesMarkup, round, type TextLine, textMarkup } from './set-text.ts';
import { paperTexts } from './words.ts';

interface PlanPageInput {
  readonly plan: FilmingPlan;
  readonly flight: PaperFlight;
  readonly name: string;
  readonly standing: string;
  /** of one camera; left out while they are computed */
  readonly errors?: ExpectedErrors;
  /** as it is written on the sheet */
  readonly date?: string;
  readonly origin?: string;
  readonly typeface?: Typeface;
}

const A4_SIDE = { width: 297, height: 210 } as const;
const WIDTH = A4_SIDE.width * PER_MM;
const EDGE = 70;
const OWN = { x: 720, y: 250, width: WIDTH - EDGE - 720, height: 560 } as const;
const SIDE = { x: 720, y: 1048, width: WIDTH - EDGE - 720, height: 180 } as const;
const ABOVE = { top: 716, height: 350, width: 580 } as const;
const DEG = 180 / Math.PI;
const t = paperTexts.plan;

export function drawPlan(input: PlanPageInput): PaperPage {
  const { plan, flight, name } = input;
  const { camera } = plan;
  const sentence: TextLine = wordFilming(plan).map(({ text, isStrong }) =>
    isStrong ? { text, weight: BOLD } : { text },
  );
  const said = fitText(sentence, [
    { width: WIDTH - 2 * EDGE, lines: 1, size: 40, leading: 48 },
    { width: WIDTH - 2 * EDGE, lines: 2, size: 30, leading: 38 },
  ]);
  const set = `${t.camera(PLAIN_FILMING.metres(camera.up), (camera.offSquare * DEG).toFixed(0), (camera.view * DEG).toFixed(0))}, ${camera.width} × ${camera.height}, ${t.shutter} ${wordShutter(camera.shutter)}, ${wordLines(camera.lines)}. ${t.locked}`;
  const [along, across] = marksOf(plan);
  const foot: TextLine = [
    { text: `${ONE_CAMERA} `, weight: BOLD },
    { text: `${plan.isOverWater ? '' : `${t.marks(along.toFixed(1), across.toFixed(1))} `}${ASK_FIRST}` },
  ];
  const markup = [
    textMarkup([{ text: `${t.title} `, weight: BOLD }, { text: name }], { x: EDGE, y: 80, size: 22 }),
    ...(input.date ? [textMarkup([{ text: input.date }], { x: WIDTH - EDGE, y: 80, size: 20, anchor: 'end' })] : []),
    linesMarkup(said, { x: EDGE, y: 134 }),
    linesMarkup(fitText([{ text: set }], [{ width: WIDTH - 2 * EDGE, lines: 2, size: 20, leading: 25 }]), {
      x: EDGE,
      y: 196,
    }),
    ownMarkup(plan, flight),
    tableMarkup(plan, input.errors),
    aboveMarkup(plan, flight),
    textMarkup([{ text: t.side, weight: BOLD }], { x: SIDE.x, y: SIDE.y - SIDE.height - 24, size: 20 }),
    sideMarkup(plan, flight, SIDE),
    linesMarkup(fitText(foot, [{ width: WIDTH - 2 * EDGE, lines: 2, size: 21, leading: 26 }]), { x: EDGE, y: 1120 }),
    linesMarkup(fitText([{ text: input.standing }], [{ width: WIDTH - 2 * EDGE, lines: 2, size: 18, leading: 22 }]), {
      x: EDGE,
      y: 1190,
    }),
  ].join('\n');
  return pageSvg({
    widthMm: A4_SIDE.width,
    heightMm: A4_SIDE.height,
    title: `${t.title} ${name}`,
    markup,
    ...(input.origin ? { origin: input.origin } : {}),
    ...(input.typeface ? { typeface: input.typeface } : {}),
  });
}

function ownMarkup(plan: FilmingPlan, flight: PaperFlight): string {
  const shape = plan.camera.width / plan.camera.height;
  const width = Math.min(OWN.width, OWN.height * shape);
  const height = width / shape;
  const { body } = flight.staged;
  const ghosts = ghostTimes(flight.duration, 3, 3, 4).map((s) => flight.pose(s));
  const now = flight.pose(plan.t[plan.steps.most.row]);
  const items = [...ownStill(plan, { body, ghosts }, width), ...ownNow(plan, body, now, width), ownRoom(plan, width)];
  return [
    textMarkup([{ text: t.own(now.t.toFixed(2)), weight: BOLD }], { x: OWN.x, y: OWN.y - 10, size: 20 }),
    `<clipPath id="own"><rect width="${round(width)}" height="${round(height)}"/></clipPath>`,
    `<g transform="translate(${OWN.x} ${OWN.y})"><g clip-path="url(#own)">${drawn(items)}</g><rect width="${round(width)}" height="${round(height)}" fill="none" stroke="#000000" stroke-width="2.4"/></g>`,
  ].join('');
}

/** To scale: the camera at the left, the room at the right, seen from above. */
function aboveMarkup(plan: FilmingPlan, flight: PaperFlight): string {
  const { camera } = plan;
  const [long, broad] = roomSize(plan);
  const across = camera.away * Math.cos(camera.offSquare);
  const along = -camera.away * Math.sin(camera.offSquare);
  const half = Math.min(camera.view / 2, 1.2);
  // m from the camera, to the right and downward: the far corners of what it sees, and of the room
  const middle = Math.atan2(-along, across);
  const far = camera.away + broad / 2 + 0.4;
  const corner = (a: number): readonly [number, number] => [
    (far * Math.cos(middle + a)) / Math.cos(a),
    (far * Math.sin(middle + a)) / Math.cos(a),
  ];
  const corners = [corner(-half), corner(half)];
  const downs = [0, -along - long / 2, -along + long / 2, ...corners.map(([, down]) => down)];
  const rights = [across + broad / 2, ...corners.map(([right]) => right)];
  const [least, most] = [Math.min(...downs), Math.max(...downs)];
  const k = Math.min(ABOVE.height / (most - least), ABOVE.width / (Math.max(...rights) + 0.4));
  const [cx, cy] = [EDGE + 24, ABOVE.top - least * k];
  const [x, y] = [cx + across * k, cy - along * k];
  const edge = (at: readonly [number, number]): string => `${round(cx + at[0] * k)} ${round(cy + at[1] * k)}`;
  // turned by a quarter about the line of sight: right x up stays toward
  const above = planView(plan, 'above');
  const [u, v, w0] = above.right;
  const turned: View = { right: above.up, up: [-u, -v, -w0], toward: above.toward };
  const now = flight.pose(plan.t[plan.steps.most.row]);
  const figure = drawn(
    figureItems(flight.staged.body, now.frames, { view: turned, scale: k, anchor: plan.stand.middle, x, y }),
  );
  const [w, h] = [broad * k, long * k];
  const label = (text: string, at: readonly [number, number]): string =>
    textMarkup([{ text, weight: BOLD }], { x: at[0], y: at[1], size: 22, anchor: 'middle' });
  return [
    textMarkup([{ text: t.above, weight: BOLD }], { x: EDGE, y: ABOVE.top - 34, size: 20 }),
    `<path d="M${round(cx)} ${round(cy)}L${edge(corners[0])}L${edge(corners[1])}Z" fill="#e4e4e4" stroke="#000000" stroke-width="1.5" stroke-dasharray="5 5"/>`,
    `<rect x="${round(x - w / 2)}" y="${round(y - h / 2)}" width="${round(w)}" height="${round(h)}" fill="#ffffff" stroke="#000000" stroke-width="2"/>`,
    figure,
    `<rect x="${round(cx - 16)}" y="${round(cy - 12)}" width="22" height="24" fill="#000000"/>`,
    label(PLAIN_FILMING.metres(Math.round(10 * across) / 10), [(cx + x - w / 2) / 2, (cy + y) / 2 + 8]),
    ...(Math.abs(along) > 0.05
      ? [
          label(t.beside(PLAIN_FILMING.metres(Math.abs(Math.round(10 * along) / 10)), along < 0), [
            cx + 150,
            cy + (along < 0 ? -22 : 40),
          ]),
        ]
      : []),
  ].join('');
}

const ERRORS = ['airTime', 'somersault', 'twist', 'tilt', 'momentum'] as const;

/** As much as is read of ±: two figures, or one over ten. */
function wordError(errors: ExpectedErrors, row: (typeof ERRORS)[number]): string {
  if (row === 'airTime') return `± ${errors.airTime.toFixed(3)} s`;
  const value = errors.one[row] * (row === 'momentum' ? 100 : DEG);
  if (!Number.isFinite(value)) return t.notKnown;
  return `± ${value.toFixed(value < 10 ? 1 : 0)}${row === 'momentum' ? ' %' : '°'}`;
}

function tableMarkup(plan: FilmingPlan, errors: ExpectedErrors | undefined): string {
  const fast = fastestOf(plan);
  const [long, broad, high] = roomSize(plan);
  const hidden = mostHidden(plan.hidden);
  const rows: [string, string][] = [
    [t.room, `${long.toFixed(1)} × ${broad.toFixed(1)} × ${high.toFixed(1)} m`],
    [t.away, PLAIN_FILMING.metres(plan.camera.away)],
    [t.held, plan.holdsFrom === undefined ? t.never : PLAIN_FILMING.metres(plan.holdsFrom)],
    ...(fast
      ? ([
          [
            t.fastest,
            `${(fast.degrees * DEG).toFixed(1)}°, ${PLAIN_FILMING.step(fast.metres)}, ${wordPixels(fast.pixels)} px`,
          ],
          [t.blur, `${wordPixels(fast.blur)} px`],
          [t.skew, `${wordPixels(Math.max(...plan.steps.skew))} px`],
        ] as [string, string][])
      : []),
    ...(hidden ? ([[t.hidden(wordJoint(hidden)), wordShare(hidden.share)]] as [string, string][]) : []),
    ...(errors ? ERRORS.map((row): [string, string] => [t.expected[row], wordError(errors, row)]) : []),
  ];
  const right = OWN.x - 60;
  const pitch = errors ? 32 : 48;
  return rows
    .map(([name, value], i) => {
      const y = (errors ? 264 : 290) + pitch * i;
      return `${textMarkup([{ text: name }], { x: EDGE, y, size: 21 })}${textMarkup([{ text: value, weight: BOLD }], { x: right, y, size: 21, anchor: 'end' })}<rect x="${EDGE}" y="${y + (errors ? 9 : 14)}" width="${right - EDGE}" height="1.5" fill="#b4b4b4"/>`;
    })
    .join('');
}
