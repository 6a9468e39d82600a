// Text from anywhere stays text: no character of it ends an element, or makes the page no XML.
import { expect, test } from 'vitest';
import { escapeText } from '../../src/paper/set-text.ts';

test('what XML has no place for is a space; its own signs are escaped', () => {
  expect(escapeText('a\u0001b\u0085<c>&"')).toBe('a b &lt;c&gt;&amp;&quot;');
});
