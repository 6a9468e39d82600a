// The keys of the words objects, and what reads them: finds texts that nothing shows.
import ts from 'typescript';

const parse = (path: string, text: string): ts.SourceFile =>
  ts.createSourceFile(
    path,
    text,
    ts.ScriptTarget.Latest,
    true,
    path.endsWith('x') ? ts.ScriptKind.TSX : ts.ScriptKind.TS,
  );

/** "texts.caution.word" for every key of the objects that a words file exports. */
export function listTextKeys(path: string, text: string): string[] {
  const tree = parse(path, text);
  const keys: string[] = [];
  const walk = (value: ts.Node | undefined, at: string): void => {
    if (value && (ts.isAsExpression(value) || ts.isSatisfiesExpression(value))) walk(value.expression, at);
    if (!value || !ts.isObjectLiteralExpression(value)) return;
    for (const p of value.properties) {
      if (!p.name || ts.isComputedPropertyName(p.name)) continue;
      const own = `${at}.${ts.isStringLiteralLike(p.name) ? p.name.text : p.name.getText()}`;
      keys.push(own);
      if (ts.isPropertyAssignment(p)) walk(p.initializer, own);
    }
  };
  for (const s of tree.statements)
    if (ts.isVariableStatement(s) && s.modifiers?.some((m) => m.kind === ts.SyntaxKind.ExportKeyword))
      for (const d of s.declarationList.declarations) walk(d.initializer, d.name.getText());
  return keys;
}

export interface Reads {
  /** names after a dot, taken out of an object, or written as a text: what an object may be asked for */
  readonly names: ReadonlySet<string>;
  /** objects taken as a whole or by a computed key: all of what they hold may be read */
  readonly wholes: ReadonlySet<string>;
}

export function findReads(files: readonly (readonly [path: string, text: string])[]): Reads {
  const names = new Set<string>();
  const wholes = new Set<string>();
  for (const [path, text] of files) {
    (function visit(node: ts.Node): void {
      if (ts.isPropertyAccessExpression(node)) {
        names.add(node.name.text);
        if (!ts.isPropertyAccessExpression(node.parent)) wholes.add(node.name.text);
      } else if (ts.isElementAccessExpression(node) && ts.isIdentifier(node.expression))
        wholes.add(node.expression.text);
      else if (ts.isBindingElement(node)) {
        const name = (node.propertyName ?? node.name).getText();
        names.add(name);
        wholes.add(name);
      } else if (ts.isStringLiteralLike(node)) names.add(node.text);
      ts.forEachChild(node, visit);
    })(parse(path, text));
  }
  return { names, wholes };
}

/** Keys that are never named, and lie in nothing that is taken as a whole. */
export function findUnread(keys: readonly string[], { names, wholes }: Reads): string[] {
  return keys.filter((key) => {
    const parts = key.split('.');
    return !names.has(parts[parts.length - 1]) && !parts.slice(0, -1).some((part) => wholes.has(part));
  });
}
