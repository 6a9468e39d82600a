// npm start: installs, builds and serves the app. Options: --port N (that port and no other).
import { ensureAppBuilt } from './build-app.mjs';
import { ensureInstalled, LauncherError } from './install.mjs';

const caution =
  'Caution: this is a model, not coaching advice. New skills only with a qualified coach, progressions, spotting and ' +
  'matting; local and federation rules come first.';

function parsePort(args) {
  const at = args.indexOf('--port');
  if (at < 0) return {};
  const port = Number(args[at + 1]);
  if (!Number.isInteger(port) || port < 1 || port > 65535) {
    throw new LauncherError(`--port is ${args[at + 1]}; it must be a whole number from 1 to 65535.`);
  }
  return { port, tries: 1 };
}

/** npm passes a kill on to its shell only; a server without a parent would keep the port. */
function endWithParent(end) {
  const parent = process.ppid;
  const timer = setInterval(() => {
    if (process.ppid === parent) return;
    clearInterval(timer);
    end();
  }, 500);
  timer.unref();
}

try {
  const options = parsePort(process.argv.slice(2));
  ensureInstalled();
  ensureAppBuilt();
  // its package is there only now
  const { serveDist } = await import('./serve.mjs');
  const { server, url } = await serveDist(options);
  console.log(`\nShapeflight is at ${url}\n${caution}\nCtrl+C ends it.`);
  const end = () => {
    server.close();
    server.closeAllConnections();
  };
  for (const signal of ['SIGINT', 'SIGTERM']) process.once(signal, end);
  if (process.env.npm_lifecycle_event === 'start') endWithParent(end);
} catch (error) {
  if (!(error instanceof LauncherError)) throw error;
  console.error(`\n${error.message}`);
  process.exitCode = 1;
}
