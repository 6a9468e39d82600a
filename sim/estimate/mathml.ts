/**
 * A formula set as mathematics: MathML Core as plain nodes, built from our own tree. A page makes elements of them one by
 * one, text as text; formatMathml writes them out with everything escaped. Nothing a sheet holds becomes markup.
 */
import type { Expression, Operator } from './expression.ts';

export interface MathNode {
  readonly tag: 'math' | 'mrow' | 'mi' | 'mn' | 'mo' | 'mtext' | 'mspace' | 'mfrac' | 'msup' | 'msub' | 'mroot';
  readonly attributes?: Readonly<Record<string, string>>;
  readonly text?: string;
  readonly children?: readonly MathNode[];
}

const leaf = (tag: MathNode['tag'], text: string, attributes?: MathNode['attributes']): MathNode => ({
  tag,
  text,
  ...(attributes ? { attributes } : {}),
});
const group = (tag: MathNode['tag'], ...children: readonly MathNode[]): MathNode => ({ tag, children });
const THIN: MathNode = { tag: 'mspace', attributes: { width: '0.17em' } };
const UPRIGHT = { mathvariant: 'normal' };

const GREEK: Readonly<Record<string, string>> = {
  alpha: 'α',
  beta: 'β',
  gamma: 'γ',
  delta: 'δ',
  Delta: 'Δ',
  epsilon: 'ε',
  zeta: 'ζ',
  eta: 'η',
  theta: 'θ',
  kappa: 'κ',
  lambda: 'λ',
  mu: 'μ',
  nu: 'ν',
  rho: 'ρ',
  sigma: 'σ',
  tau: 'τ',
  phi: 'φ',
  Phi: 'Φ',
  psi: 'ψ',
  Psi: 'Ψ',
  omega: 'ω',
  Omega: 'Ω',
};

/** inertia_flip: inertia with flip below; greek letters by their names. */
export function setName(name: string): MathNode {
  const [head, ...below] = name.split('_').filter((part) => part !== '');
  const word = (text: string): MathNode => {
    const greek = Object.hasOwn(GREEK, text) ? GREEK[text] : text;
    return leaf('mi', greek, [...greek].length > 1 ? UPRIGHT : undefined);
  };
  if (head === undefined) return word(name);
  return below.length === 0 ? word(head) : group('msub', word(head), leaf('mtext', below.join(' ')));
}

/** What is set for a name: the name itself, or its number. */
type NameSetter = (name: string) => MathNode;

const STRENGTH: Readonly<Record<Operator, number>> = { '+': 1, '-': 1, '*': 2, '/': 2, '^': 4 };

/** How tightly a formula holds together as it is set; a fraction and a root are whole. */
function strength(e: Expression): number {
  if (e.kind === 'minus') return 1;
  if (e.kind !== 'operation' || e.operator === '/') return 5;
  return STRENGTH[e.operator];
}

export function setExpression(e: Expression, setter: NameSetter = setName): MathNode {
  const set = (inner: Expression): MathNode => setExpression(inner, setter);
  const within = (inner: Expression, least: number): MathNode =>
    strength(inner) < least ? group('mrow', leaf('mo', '('), set(inner), leaf('mo', ')')) : set(inner);
  switch (e.kind) {
    case 'number':
      return Math.abs(e.value - Math.PI) < 1e-15 ? leaf('mi', 'π', UPRIGHT) : leaf('mn', formatNumber(e.value));
    case 'unit':
      return leaf('mi', e.unit.name === 'deg' ? '°' : e.unit.name, UPRIGHT);
    case 'name':
      return setter(e.name);
    case 'link':
      return leaf('mtext', e.text);
    case 'minus':
      return group('mrow', leaf('mo', '−'), within(e.a, 2));
    case 'operation':
      switch (e.operator) {
        case '/':
          return group('mfrac', set(e.a), set(e.b));
        case '^':
          return group('msup', e.a.kind === 'operation' ? bracket(set(e.a)) : within(e.a, 5), set(e.b));
        case '*':
          return group('mrow', within(e.a, 2), e.side ? THIN : leaf('mo', '·'), within(e.b, 2));
        default:
          return group('mrow', within(e.a, 1), leaf('mo', e.operator === '-' ? '−' : '+'), within(e.b, 2));
      }
    case 'call':
      // the page's typeface has no root that grows
      if (e.name === 'sqrt') return group('mrow', leaf('mo', '√'), bracket(set(e.args[0])));
      if (e.name === 'cbrt') return group('mroot', set(e.args[0]), leaf('mn', '3'));
      return group(
        'mrow',
        leaf('mi', e.name, UPRIGHT),
        bracket(...e.args.flatMap((a, i) => (i ? [leaf('mo', ','), set(a)] : [set(a)]))),
      );
  }
}

const bracket = (...inner: readonly MathNode[]): MathNode => group('mrow', leaf('mo', '('), ...inner, leaf('mo', ')'));

/** name = formula */
export const setFormula = (name: string, e: Expression): MathNode => ({
  tag: 'math',
  attributes: { displaystyle: 'true' },
  children: [group('mrow', setName(name), leaf('mo', '='), setExpression(e))],
});

/** A number as it is set in a formula: as typed, at most 12 figures. */
function formatNumber(x: number): string {
  const text = String(Number(x.toPrecision(12)));
  return text.replace('-', '−');
}

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};
export const escapeText = (text: string): string =>
  [...text].map((c) => ESCAPES[c] ?? (/[\p{Cc}\p{Cs}\u2028\u2029]/u.test(c) ? ' ' : c)).join('');

export function formatMathml(node: MathNode): string {
  const attributes = Object.entries(node.attributes ?? {}).map(([k, v]) => ` ${k}="${escapeText(v)}"`);
  const inner = node.children ? node.children.map(formatMathml).join('') : escapeText(node.text ?? '');
  return `<${node.tag}${attributes.join('')}>${inner}</${node.tag}>`;
}
