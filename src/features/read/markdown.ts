/**
 * The part of Markdown that lessons and glossary are written in, as blocks: headings, paragraphs, lists, tables; bold, italics, code and links inside.
 * What it does not know it leaves as text.
 */
export type Inline =
  | { readonly kind: 'text' | 'bold' | 'em' | 'code'; readonly text: string }
  | { readonly kind: 'link'; readonly text: string; readonly href: string };
type Line = readonly Inline[];

export type Block =
  | { readonly kind: 'heading'; readonly level: number; readonly text: string; readonly slug: string }
  | { readonly kind: 'paragraph'; readonly line: Line }
  | { readonly kind: 'list'; readonly ordered: boolean; readonly items: readonly Line[] }
  | { readonly kind: 'table'; readonly head: readonly string[]; readonly rows: readonly (readonly Line[])[] };

/** As headings are addressed: small letters, hyphens for what is between words. */
export const slugOf = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '');

const ITEM = /^(?:(\d+)\.|[-*])\s+/;
const cells = (row: string): string[] =>
  row
    .replace(/^\s*\||\|\s*$/g, '')
    .split('|')
    .map((cell) => cell.trim());

export function parseMarkdown(text: string): Block[] {
  return text
    .replaceAll('\r\n', '\n')
    .split(/\n{2,}/)
    .map((part) => part.trim())
    .filter(Boolean)
    .flatMap(parsePart);
}

function parsePart(part: string): Block[] {
  const heading = /^(#{1,4})\s+(.+?)(?:\n([\s\S]+))?$/.exec(part);
  if (heading) {
    const [, marks, title, rest] = heading;
    const text = title.trim();
    return [{ kind: 'heading', level: marks.length, text, slug: slugOf(text) }, ...(rest ? parsePart(rest) : [])];
  }
  const lines = part.split('\n');
  if (lines.length > 1 && part.startsWith('|') && /^\|[\s|:-]+\|$/.test(lines[1].trim())) {
    const [head, , ...rows] = lines;
    return [{ kind: 'table', head: cells(head), rows: rows.map((row) => cells(row).map(parseLine)) }];
  }
  const first = ITEM.exec(part);
  if (first) return [{ kind: 'list', ordered: first[1] !== undefined, items: itemsOf(lines) }];
  return [{ kind: 'paragraph', line: parseLine(lines.join(' ')) }];
}

/** A line that begins no item goes on with the one before. */
function itemsOf(lines: readonly string[]): Line[] {
  const items: string[] = [];
  for (const line of lines)
    if (ITEM.test(line)) items.push(line.replace(ITEM, ''));
    else items[items.length - 1] += ` ${line.trim()}`;
  return items.map(parseLine);
}

const INLINE = /\*\*(.+?)\*\*|\[([^\]]+)\]\(([^)\s]+)\)|`([^`]+)`|\*([^*\s][^*]*)\*/g;

export function parseLine(text: string): Inline[] {
  const out: Inline[] = [];
  let at = 0;
  for (const found of text.matchAll(INLINE)) {
    if (found.index > at) out.push({ kind: 'text', text: text.slice(at, found.index) });
    const [whole, bold, label, href, code, em] = found;
    if (label !== undefined) out.push({ kind: 'link', text: label, href });
    else if (bold !== undefined) out.push({ kind: 'bold', text: bold });
    else if (code !== undefined) out.push({ kind: 'code', text: code });
    else out.push({ kind: 'em', text: em });
    at = found.index + whole.length;
  }
  if (at < text.length) out.push({ kind: 'text', text: text.slice(at) });
  return out;
}
