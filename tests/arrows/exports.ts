// What each file exports and what it takes from others, read from the syntax trees: finds exports that nothing takes.
import ts from 'typescript';

export interface Module {
  readonly path: string;
  /** declared here */
  readonly own: readonly string[];
  /** exported here, from there: name here -> [file, name there] */
  readonly passed: ReadonlyMap<string, readonly [string, string]>;
  /** [file, name]; a name of * takes all of it */
  readonly taken: readonly (readonly [string, string])[];
  /** names after a dot, and those taken out of an object: `contact.makeSwing`, `const { land } = ...` */
  readonly members: ReadonlySet<string>;
}

type Resolve = (from: string, name: string) => string;

export function readModule(path: string, text: string, resolve: Resolve): Module {
  const kind = path.endsWith('x') ? ts.ScriptKind.TSX : ts.ScriptKind.TS;
  const tree = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true, kind);
  const own: string[] = [];
  const passed = new Map<string, readonly [string, string]>();
  const taken: (readonly [string, string])[] = [];
  const members = new Set<string>();
  const fileOf = (node: ts.Node | undefined): string | undefined =>
    node && ts.isStringLiteralLike(node) && node.text.startsWith('.') ? resolve(path, node.text) : undefined;

  function visit(node: ts.Node): void {
    if (ts.isImportDeclaration(node)) takeImport(node);
    else if (ts.isExportDeclaration(node)) passExport(node);
    else if (node.parent === tree && isExported(node)) own.push(...namesOf(node));
    if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword)
      takeAll(fileOf(node.arguments[0]));
    if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) {
      const file = fileOf(node.argument.literal);
      if (file && node.qualifier) taken.push([file, node.qualifier.getText().split('.')[0]]);
      else takeAll(file);
    }
    if (ts.isPropertyAccessExpression(node)) members.add(node.name.text);
    if (ts.isQualifiedName(node)) members.add(node.right.text);
    if (ts.isBindingElement(node)) members.add((node.propertyName ?? node.name).getText());
    if (ts.isLiteralTypeNode(node) && ts.isStringLiteral(node.literal)) members.add(node.literal.text);
    ts.forEachChild(node, visit);
  }
  function takeAll(file: string | undefined): void {
    if (file) taken.push([file, '*']);
  }
  function takeImport(node: ts.ImportDeclaration): void {
    const file = fileOf(node.moduleSpecifier);
    const bindings = node.importClause?.namedBindings;
    if (!file || !bindings) return;
    if (ts.isNamespaceImport(bindings)) taken.push([file, '*']);
    else for (const e of bindings.elements) taken.push([file, (e.propertyName ?? e.name).text]);
  }
  function passExport(node: ts.ExportDeclaration): void {
    if (!node.exportClause || !ts.isNamedExports(node.exportClause)) return;
    const file = fileOf(node.moduleSpecifier);
    for (const e of node.exportClause.elements) {
      if (file) passed.set(e.name.text, [file, (e.propertyName ?? e.name).text]);
      else own.push(e.name.text);
    }
  }

  visit(tree);
  return { path, own, passed, taken, members };
}

const isExported = (node: ts.Node): boolean =>
  ts.canHaveModifiers(node) && !!ts.getModifiers(node)?.some((m) => m.kind === ts.SyntaxKind.ExportKeyword);

function namesOf(node: ts.Node): string[] {
  if (ts.isVariableStatement(node)) return node.declarationList.declarations.flatMap((d) => bound(d.name));
  const named = node as ts.Node & { readonly name?: ts.Node };
  return named.name && ts.isIdentifier(named.name) ? [named.name.text] : [];
}

const bound = (name: ts.BindingName): string[] =>
  ts.isIdentifier(name) ? [name.text] : name.elements.flatMap((e) => (ts.isBindingElement(e) ? bound(e.name) : []));

/** "file name" of every export that no module of `users` takes, by itself or through what passes it on. */
export function findUnused(modules: readonly Module[], users: readonly Module[]): string[] {
  const byPath = new Map(modules.map((m) => [m.path, m]));
  const used = new Set<string>();
  const use = (file: string, name: string): void => {
    const module = byPath.get(file);
    const key = `${file} ${name}`;
    if (!module || used.has(key)) return;
    used.add(key);
    const from = module.passed.get(name);
    if (from) use(...from);
  };
  const members = new Set(users.flatMap((user) => [...user.members]));
  for (const user of users)
    for (const [file, name] of user.taken) {
      if (name !== '*') use(file, name);
      else
        for (const each of [...(byPath.get(file)?.own ?? []), ...(byPath.get(file)?.passed.keys() ?? [])])
          if (members.has(each)) use(file, each);
    }
  return modules.flatMap((m) =>
    [...m.own, ...m.passed.keys()].map((name) => `${m.path} ${name}`).filter((key) => !used.has(key)),
  );
}

/** How often each name is written in code; comments and texts do not count. */
export function countNames(text: string): Map<string, number> {
  const counts = new Map<string, number>();
  const visit = (node: ts.Node): void => {
    if (ts.isIdentifier(node)) counts.set(node.text, (counts.get(node.text) ?? 0) + 1);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile('a.tsx', text, ts.ScriptTarget.Latest, false, ts.ScriptKind.TSX));
  return counts;
}
