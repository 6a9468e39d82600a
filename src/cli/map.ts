/** The command "map": two inputs against any results, on a grid. */
import {
  axisValue,
  type Contour,
  contactFor,
  findContour,
  formatMapJson,
  formatMapRow,
  type MapRequest,
  type MapRow,
  OUT_UNITS,
  openMap,
  provenance,
  roundLevels,
  STUDY_TOLERANCE,
  usualStudy,
  wordBalance,
} from '../../sim/index.ts';
import { wordCall } from './call.ts';
import { CLOSING } from './closing.ts';
import type { CommandOutput } from './interrupt.ts';
import { runPieces } from './jobs.ts';
import { NOTHING_KEPT, outputsOf, wordNumber } from './margin.ts';
import { type MapCommand, readAxis, readBound } from './margin-args.ts';
import { readSkill } from './read-input.ts';
import { formatTable } from './table.ts';
import { checkApart, writeFiles } from './write-files.ts';

export async function runMap(command: MapCommand, args: readonly string[]): Promise<string | CommandOutput> {
  const { spec, inputs, origin } = await readSkill(command.skill);
  const wanted = outputsOf(command);
  checkApart(wanted, inputs);
  const contact = await contactFor(spec);
  const request: MapRequest = {
    spec,
    x: { ...readAxis(spec, '--x', command.x), count: command.columns },
    y: { ...readAxis(spec, '--y', command.y), count: command.rows },
    results: command.of,
    window: command.window.length === 0 ? usualStudy(spec, 1, contact).window : command.window.map(readBound),
    ...(command.balance ? { balance: command.balance } : {}),
  };
  const map = openMap(request, contact);
  const wantedRows = Array.from({ length: command.to - command.from }, (_, i) => command.from + i);
  const { results: rows, isInterrupted } = await runPieces('map', request, wantedRows, command.jobs);
  if (rows.length === 0 && isInterrupted) return { out: '', interrupted: NOTHING_KEPT };
  const contours = map.results.map((r, k) => ({ result: r.id, contours: contoursOf(rows, k, map.x.count, r.unit) }));
  const balance = wordBalance(command.balance);
  const from = provenance({
    call: wordCall('map', args),
    inputs: [origin],
    tolerance: STUDY_TOLERANCE,
    seed: null,
  });
  writeFiles(
    wanted.map((output) => ({
      ...output,
      pieces:
        output.option === '--csv'
          ? rows.map((row) => formatMapRow(map, row, axisValue, { from, isNumeric: command.isNumeric }))
          : [
              formatMapJson({
                title: spec.title,
                provenance: from,
                map,
                balance,
                from: command.from,
                rows,
                contours,
                placeOf: axisValue,
              }),
            ],
    })),
  );
  const axes = [map.x, map.y].map((a) => {
    const unit = OUT_UNITS[a.input.unit];
    return [a.input.id, ...[a.from, a.to, a.input.value].map((v) => wordNumber(v, unit)), unit.word, String(a.count)];
  });
  const found = map.results.map((r, k) => {
    const values = rows.flatMap((row) => Array.from(row.values.subarray(k * map.x.count, (k + 1) * map.x.count)));
    const known = values.filter(Number.isFinite);
    const unit = OUT_UNITS[r.unit];
    const ends = known.length > 0 ? [Math.min(...known), Math.max(...known)] : [Number.NaN, Number.NaN];
    return [r.id, ...ends.map((v) => wordNumber(v, unit)), unit.word, String(values.length - known.length)];
  });
  const all = rows.length * map.x.count;
  const inside = rows.reduce((sum, row) => sum + row.distance.filter((d) => d <= 1).length, 0);
  const out = [
    `${spec.title}; ${balance}`,
    `Axes\n${formatTable(['input', 'from', 'to', 'as it is', 'unit', 'values'], axes, 1)}`,
    `Results over rows ${command.from} to ${command.from + rows.length - 1}\n${formatTable(['result', 'least', 'greatest', 'unit', 'not defined'], found, 1)}`,
    `${inside} of ${all} places land in the window (${((100 * inside) / all).toFixed(1)} %)`,
    CLOSING,
  ]
    .join('\n\n')
    .concat('\n');
  if (!isInterrupted) return out;
  const next = command.from + rows.length;
  return {
    out,
    interrupted: `interrupted: ${rows.length} of ${wantedRows.length} rows are kept; --from ${next} --to ${command.to} flies the others`,
  };
}

/** Round levels in the unit people read. */
function contoursOf(rows: readonly MapRow[], k: number, columns: number, unit: keyof typeof OUT_UNITS): Contour[] {
  if (rows.length < 2) return [];
  const values = Float64Array.from(
    rows.flatMap((row) => Array.from(row.values.subarray(k * columns, (k + 1) * columns))),
  );
  const { scale } = OUT_UNITS[unit];
  return roundLevels(values.map((v) => v * scale)).map((level) =>
    findContour(values, columns, rows.length, level / scale),
  );
}
