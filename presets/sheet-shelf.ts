/** The estimate sheets that come with Shapeflight, apart from the rest so that the page can start without them. */
import type { SheetFile } from '../sim/index.ts';

const files = import.meta.glob<SheetFile>('./sheets/*.json', { eager: true, import: 'default' });

export const sheets: Readonly<Record<string, SheetFile>> = Object.fromEntries(
  Object.entries(files).map(([path, file]) => [path.replace(/^.*\/|\.json$/g, ''), file]),
);
