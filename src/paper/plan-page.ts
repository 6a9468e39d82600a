/** The filming plan on one page: A4 on its side, black and grey. Sentence, the camera's own view, from above, a table, what to lay out and whom to ask. */
import type { FilmingPlan } from '../../sim/index.ts';
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
import { ownNow, ownRoom, ownStill } from '../scene/filmed-scene.ts';
import { ghostTimes } from '../scene/pose-frames.ts';
import { type PaperPage, PER_MM, pageSvg, type Typeface } from './page-svg.ts';
import type { PaperFlight } from './paper-flight.ts';
import { drawn } from './paper-ink.ts';
import { BOLD, fitText, linesMarkup, round, type TextLine, textMarkup } from './set-text.ts';
import { paperTexts } from './words.ts';

export interface PlanPageInput {
  readonly plan: FilmingPlan;
  readonly flight: PaperFlight;
  readonly name: string;
  readonly standing: string;
  readonly origin?: string;
  readonly typeface?: Typeface;
}

const A4_SIDE = { width: 297, height: 210 } as const;
const WIDTH = A4_SIDE.width * PER_MM;
const EDGE = 70;
const OWN = { x: 720, y: 250, width: WIDTH - EDGE - 720, height: 560 } as const;
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
    linesMarkup(said, { x: EDGE, y: 134 }),
    linesMarkup(fitText([{ text: set }], [{ width: WIDTH - 2 * EDGE, lines: 2, size: 20, leading: 25 }]), {
      x: EDGE,
      y: 196,
    }),
    ownMarkup(plan, flight),
    tableMarkup(plan),
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

function tableMarkup(plan: FilmingPlan): string {
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
  ];
  const right = OWN.x - 60;
  return rows
    .map(([name, value], i) => {
      const y = 290 + 48 * i;
      return `${textMarkup([{ text: name }], { x: EDGE, y, size: 21 })}${textMarkup([{ text: value, weight: BOLD }], { x: right, y, size: 21, anchor: 'end' })}<rect x="${EDGE}" y="${y + 14}" width="${right - EDGE}" height="1.5" fill="#b4b4b4"/>`;
    })
    .join('');
}
