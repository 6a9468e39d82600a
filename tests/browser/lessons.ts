// A lesson as its test reads it: what it quotes has to be said by the page, what it names has to stand on the page.
import { readFileSync } from 'node:fs';
import { expect, type Locator } from '@playwright/test';

const plain = (text: string): string => text.replace(/\s+/g, ' ').trim();
const readLesson = (name: string): string =>
  plain(readFileSync(new URL(`../../docs/lessons/${name}.md`, import.meta.url), 'utf8'));

const quotesOf = (lesson: string): string[] => [...lesson.matchAll(/"([^"]+)"/g)].map((m) => m[1]);
export interface Walk {
  /** the lesson quotes this, and the page says it there */
  says(quote: string, where: Locator | string): Promise<void>;
  /** the lesson names this control, and the walk looks for it by that name */
  named(control: string): string;
  /** the lesson gives this to be typed */
  typed(quote: string): string;
  /** nothing that the lesson quotes was left out */
  end(): void;
}

export function walk(name: string): Walk {
  const lesson = readLesson(name);
  const quotes = quotesOf(lesson);
  const left = new Set(quotes);
  const take = (quote: string): string => {
    expect(quotes, `${name}.md quotes`).toContain(quote);
    left.delete(quote);
    return quote;
  };
  return {
    says: async (quote, where) => {
      take(quote);
      if (typeof where === 'string') expect(plain(where)).toContain(quote);
      else await expect(where).toContainText(quote, { timeout: 45_000 });
    },
    named: (control) => {
      expect(lesson, `${name}.md names`).toContain(control);
      return control;
    },
    typed: take,
    end: () => expect([...left], `${name}.md quotes these too`).toEqual([]),
  };
}
