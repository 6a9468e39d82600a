/** What a file of JSON is that is no worksheet: said to who opened it among the answers of a class. */

const FORMATS: Readonly<Record<string, string>> = {
  'shapeflight-skill': 'a skill file',
  'shapeflight-athlete': 'an athlete',
  'shapeflight-sheet': 'an estimate sheet',
};

/** Of a file of JSON; undefined where its form says that it is a worksheet. */
export function nameOfJson(json: unknown): string | undefined {
  if (typeof json !== 'object' || json === null || Array.isArray(json)) return 'data of another kind';
  const { format } = json as { format?: unknown };
  if (format === 'shapeflight-worksheet') return undefined;
  return (typeof format === 'string' && Object.hasOwn(FORMATS, format) && FORMATS[format]) || 'data of another kind';
}
