// The page asks for its offline copy whether or not its load is over when the module is read.
import { afterEach, expect, test, vi } from 'vitest';

afterEach(() => {
  vi.unstubAllGlobals();
  vi.unstubAllEnvs();
  vi.resetModules();
});

async function read(readyState: 'interactive' | 'complete') {
  const register = vi.fn(() => Promise.resolve());
  const onLoad: (() => void)[] = [];
  vi.stubEnv('PROD', true);
  vi.stubGlobal('navigator', { serviceWorker: { register } });
  vi.stubGlobal('document', { readyState });
  vi.stubGlobal('addEventListener', (type: string, then: () => void) => type === 'load' && onLoad.push(then));
  await import('../../src/offline/register.ts');
  return { register, onLoad };
}

test('a page that is still loading asks once it has loaded', async () => {
  const { register, onLoad } = await read('interactive');
  expect(register).not.toHaveBeenCalled();
  for (const then of onLoad) then();
  expect(register).toHaveBeenCalledTimes(1);
});

test('a page whose load was over before the module was read asks at once', async () => {
  const { register } = await read('complete');
  expect(register).toHaveBeenCalledTimes(1);
});
