// What is never said to people: injury, safety, ability, or what an athlete should weigh. Texts of the application, the
// command line and the ready data are read; comments are not.
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';
import { expect, test } from 'vitest';

const root = path.resolve(import.meta.dirname, '..');

const NEVER: readonly RegExp[] = [
  /\binjur\w*/i,
  /\b(un)?safe(ly|ty|r|st)?\b/i,
  /\bdanger\w*/i,
  /\b(hurt(s|ing)?|harm(s|ed|ful|ing)?)\b/i,
  /\brisk\w*/i,
  /\bunhealthy|\bhealth\w*/i,
  /\b(cap)?abilit(y|ies)\b|\bcapable\b|\bunfit\b|\btalent\w*/i,
  /\bready (for|to) (the|this|a|do|try|learn)\b/i,
  /\b(over|under)weight\b|\bobes\w*|\bbody fat\b/i,
  /\b(lose|gain|shed|reduce|put on) (some )?(weight|mass|kilos)\b/i,
  /\btoo (heavy|light|fat|thin|weak)\b/i,
  /\b(should|must|ought to) (weigh|be (lighter|heavier|stronger))\b/i,
];

const findNever = (text: string): string[] => NEVER.flatMap((word) => text.match(word)?.[0] ?? []);

/** Of browsers and packages, no words for people. */
const TECHNICAL = /^(default-src|script-src|pixi\.js\/unsafe-eval$)|'unsafe-(inline|eval)'/;

/** Everything that can be shown: strings, templates and text in the markup; not what is imported, and no comments. */
function listTexts(name: string, source: string): string[] {
  const out: string[] = [];
  const kind = name.endsWith('.tsx') ? ts.ScriptKind.TSX : ts.ScriptKind.TS;
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return;
    if (
      ts.isStringLiteralLike(node) ||
      ts.isTemplateHead(node) ||
      ts.isTemplateMiddleOrTemplateTail(node) ||
      ts.isJsxText(node)
    )
      out.push(node.text);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(name, source, ts.ScriptTarget.Latest, true, kind));
  return out.filter((text) => !TECHNICAL.test(text));
}

function textsOf(name: string): string[] {
  const source = readFileSync(path.join(root, name), 'utf8');
  return /\.tsx?$/.test(name) ? listTexts(name, source) : source.split('\n');
}

test('no text for people speaks of injury, safety or ability, or of what to weigh', () => {
  const names = execFileSync('git', ['ls-files', 'sim', 'src', 'presets', 'README.md', 'index.html'], {
    cwd: root,
    encoding: 'utf8',
  })
    .split('\n')
    .filter((name) => /\.(tsx?|json|md|html)$/.test(name));
  expect(names.length).toBeGreaterThan(300);
  const texts = names.map((name) => [name, textsOf(name)] as const);
  // the tables of words are among them
  expect(texts.flatMap(([, list]) => list).length).toBeGreaterThan(5000);
  expect(
    texts.flatMap(([name, list]) => list.flatMap((text) => findNever(text).map((word) => `${name}: ${word}`))),
  ).toEqual([]);
});

test.each([
  ["const t = { a: 'This load is dangerous' };", 'dangerous'],
  ['const t = `it is safe to try`;', 'safe'],
  ['const t = <p>Too heavy for this skill</p>;', 'Too heavy'],
  ["say('an athlete of this age should weigh less');", 'should weigh'],
  ["say('risk of injury');", 'injury'],
  ["say('beyond her ability');", 'ability'],
])('%s would be found', (source, word) => {
  expect(listTexts('a.tsx', source).flatMap(findNever)).toContain(word);
});

test('what sounds alike is no such word', () => {
  for (const text of [
    'sensibility',
    'stability of the body',
    'harmonic mean',
    'ready skills',
    'a heavy man',
    'probability',
  ])
    expect(findNever(text), text).toEqual([]);
});
