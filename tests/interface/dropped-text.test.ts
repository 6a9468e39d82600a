// Letters dropped on the page: a link of ours and the text of a file are opened, of all else it is said what may be dropped.
import { expect, test } from 'vitest';
import { readDroppedText } from '../../src/app/dropped-text.ts';

function drop(text: string): string[] {
  const done: string[] = [];
  readDroppedText(
    {
      doc: { readText: (name, given) => done.push(`read ${name}: ${given}`) },
      shell: { notify: (notice) => done.push(`said: ${notice?.text}`) },
    },
    text,
    (fragment) => done.push(`followed ${fragment}`),
  );
  return done;
}

test.each([
  ['a link of ours', 'https://bench.example/a/?rows=x#2.abc_-', 'followed #2.abc_-'],
  ['one of a worksheet, with an end of line', ' https://bench.example/#w1.abc\r\n', 'followed #w1.abc'],
  ['the text of a file', ' {"format":"x"}', 'read The dropped text:  {"format":"x"}'],
  ['a list, which its reader refuses', '[1]', 'read The dropped text: [1]'],
])('%s', (_, text, done) => expect(drop(text)).toEqual([done]));

test.each([
  ['words', 'a back tuck'],
  ['nothing', ''],
  ['another link', 'https://bench.example/page#chapter'],
  ['a script', 'javascript:alert(1)'],
  ['a link in a sentence', 'see https://bench.example/#2.abc for more'],
  ['markup', '<b>bold</b>'],
  ['ten million letters', 'a'.repeat(1e7)],
])('%s: what may be dropped is said', (_, text) => {
  const [said, ...more] = drop(text);
  expect(said).toMatch(/^said: What was dropped holds no skill\. Drop files/);
  expect(more).toEqual([]);
});
