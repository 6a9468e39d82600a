/** What the address of the page asks for: `?skill=arms-in-spin&rows=tilt,energy&hall=1`. What it does not know is passed over. */
import { ROW_NAMES, type RowName } from './rows.ts';

interface Asked {
  /** id of a ready skill */
  readonly skill: string | undefined;
  readonly rows: ReadonlySet<RowName>;
  readonly hall: boolean;
}

export function readAddress(search: string): Asked {
  const asked = new URLSearchParams(search);
  const rows = asked.get('rows') ?? '';
  const wanted = rows.split(',');
  return {
    skill: asked.get('skill') ?? undefined,
    rows: new Set(ROW_NAMES.filter((row) => rows === 'all' || wanted.includes(row))),
    hall: asked.get('hall') === '1',
  };
}

/** The address with these rows; none: without a word of rows. */
export function writeRows(href: string, open: ReadonlySet<RowName>): string {
  const url = new URL(href);
  const rows = open.size === ROW_NAMES.length ? 'all' : ROW_NAMES.filter((row) => open.has(row)).join(',');
  if (rows) url.searchParams.set('rows', rows);
  else url.searchParams.delete('rows');
  return url.href.replaceAll('%2C', ',');
}

export function writeHall(href: string, isHall: boolean): string {
  const url = new URL(href);
  if (isHall) url.searchParams.set('hall', '1');
  else url.searchParams.delete('hall');
  return url.href.replaceAll('%2C', ',');
}

/** A skill is opened by its address once: another load of the page shows what was made of it. */
export function withoutSkill(href: string): string {
  const url = new URL(href);
  url.searchParams.delete('skill');
  return url.href.replaceAll('%2C', ',');
}
