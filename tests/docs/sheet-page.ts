/** The page of all ready skills, as Markdown. */
import { CAUTION } from '../../sim/index.ts';

export interface SheetRow {
  readonly id: string;
  readonly title: string;
  readonly note: string;
  /** of the flight that is drawn, s */
  readonly airTime: number;
}

const HEAD = `# The ready skills at eight instants

Take-off, touchdown and six times between, equally far apart; of skills in several flights the last. The upper row is seen from the side that the athlete
travels past; the lower row, where a skill twists, is seen from the front by somebody who goes over with it, so that tilt and twist show. Drawn from the flights by \`npm run sheet\`.
`;

export const formatSheetPage = (rows: readonly SheetRow[]): string =>
  [
    HEAD,
    ...rows.map(
      ({ id, title, note, airTime }) =>
        `## ${title}\n\n\`${id}\`: ${airTime.toFixed(2)} s in the air.${note ? ` ${note}` : ''}\n\n![${title}, eight instants](pictures/skills-${id}.svg)\n`,
    ),
    `${CAUTION}\n`,
  ].join('\n');
