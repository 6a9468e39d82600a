/** Tries on a canvas: twist up, landing across (short, or back, at the left), the window as a box; filled marks are inside. */
import { DEG } from '../../../sim/math/angles.ts';
import { formatNumber } from '../../ui/numbers.ts';
import type { PlotPalette } from '../../ui/plot/palette.ts';
import { say } from '../../ui/units.ts';
import type { StudyResult } from './study-state.ts';
import { askTexts as t } from './words.ts';

const LEFT = 34;
const RIGHT = 8;
const TOP = 14;
const BOTTOM = 28;
const DOT = 3;

const wordShort = (rad: number): string => {
  const deg = Math.round(Math.abs(rad) * DEG);
  return deg === 0 ? '0°' : `${deg}° ${rad > 0 ? t.axisShort : t.axisPast}`;
};
const wordReach = (m: number): string =>
  Math.abs(m) < 0.005 ? '0' : `${say('length', Math.abs(m))} ${m > 0 ? t.axisForward : t.axisBack}`;

export function drawTries(
  canvas: HTMLCanvasElement,
  width: number,
  height: number,
  palette: PlotPalette,
  report: StudyResult | undefined,
  stale: boolean,
): void {
  const ratio = window.devicePixelRatio || 1;
  canvas.width = Math.round(width * ratio);
  canvas.height = Math.round(height * ratio);
  const g = canvas.getContext('2d');
  if (!g || width <= 0 || height <= 0) return;
  g.setTransform(ratio, 0, 0, ratio, 0, 0);
  g.clearRect(0, 0, width, height);
  const { colour } = palette;
  const bound = (id: string) => report?.window.find((b) => b.result === id);
  const [across, twist] = [bound(report?.across ?? ''), bound('twists')];
  if (!report || !across || !twist) return;
  const isReach = report.across === 'reach';
  const reach = (low: number, high: number, values: number[]): readonly [number, number] => {
    const known = values.filter(Number.isFinite).sort((a, b) => a - b);
    const at = (q: number): number => known[Math.round(q * (known.length - 1))] ?? low;
    // single tries far away would make all else small
    const a = Math.min(low, at(0.02));
    const b = Math.max(high, at(0.98));
    const pad = 0.08 * (b - a);
    return [a - pad, b + pad];
  };
  const [xa, xb] = reach(
    across.low,
    across.high,
    report.tries.map((one) => one.across),
  );
  const [ya, yb] = reach(
    twist.low,
    twist.high,
    report.tries.map((one) => one.twists),
  );
  // short at the left, past at the right; back at the left, forward at the right
  const x = (v: number): number => {
    const share = (v - xa) / (xb - xa);
    return LEFT + (isReach ? share : 1 - share) * (width - LEFT - RIGHT);
  };
  const y = (v: number): number => TOP + ((yb - v) / (yb - ya)) * (height - TOP - BOTTOM);
  const hold = (v: number, a: number, b: number): number => Math.min(Math.max(v, a), b);

  g.fillStyle = colour.air;
  g.fillRect(LEFT, TOP, width - LEFT - RIGHT, height - TOP - BOTTOM);
  g.strokeStyle = colour.rule;
  g.lineWidth = 1;
  g.strokeRect(LEFT + 0.5, TOP + 0.5, width - LEFT - RIGHT - 1, height - TOP - BOTTOM - 1);
  g.strokeStyle = colour.ink;
  g.lineWidth = 1.3;
  g.fillStyle = colour.raise;
  const [left, right] = [x(across.low), x(across.high)].sort((a, b) => a - b);
  const box = [left, y(twist.high), right - left, y(twist.low) - y(twist.high)] as const;
  g.fillRect(...box);
  g.strokeRect(...box);

  g.font = palette.font(palette.tickPx, 450);
  g.fillStyle = colour['ink-2'];
  g.textBaseline = 'middle';
  g.textAlign = 'right';
  for (const v of [twist.low, (twist.low + twist.high) / 2, twist.high]) {
    g.fillStyle = colour.twist;
    g.fillText(formatNumber(v, 2), LEFT - 5, y(v));
  }
  g.fillStyle = colour['ink-2'];
  g.textBaseline = 'top';
  g.textAlign = 'center';
  // a narrow window has room for its edges beside it, and none for its middle
  const isNarrow = right - left < 130;
  for (const v of isNarrow ? [across.high, across.low] : [across.high, 0, across.low]) {
    const isLeft = Math.abs(x(v) - left) < 0.5;
    const word = isReach ? wordReach(v) : wordShort(v);
    const isPressed = isNarrow && !isLeft && x(v) + g.measureText(word).width > width;
    g.textAlign = !isNarrow ? 'center' : isLeft || isPressed ? 'right' : 'left';
    const room = isNarrow ? 0 : 24;
    g.fillText(word, isPressed ? width : hold(x(v), LEFT + room, width - RIGHT - room), height - BOTTOM + 6);
  }
  g.textAlign = 'left';
  g.fillStyle = colour.twist;
  g.font = palette.font(palette.tickPx, 620);
  g.fillText(t.axisTwist, 0, 0);

  g.globalAlpha = stale ? 0.45 : 1;
  g.lineWidth = 1.1;
  g.strokeStyle = colour.ink;
  for (const one of report.tries) {
    if (!Number.isFinite(one.across + one.twists)) continue;
    g.beginPath();
    g.arc(
      hold(x(one.across), LEFT + DOT, width - RIGHT - DOT),
      hold(y(one.twists), TOP + DOT, height - BOTTOM - DOT),
      report.tries.length > 300 ? DOT - 1 : DOT,
      0,
      2 * Math.PI,
    );
    if (one.inside) {
      g.fillStyle = colour.ink;
      g.fill();
    } else {
      g.fillStyle = colour.air;
      g.fill();
      g.stroke();
    }
  }
  g.globalAlpha = 1;
}
