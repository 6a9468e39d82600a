/**
 * Steps of a build of its own: the page as one HTML file, to be opened from a memory stick or an attachment. Scripts, styles, the
 * typeface and the script of the workers lie in it, and its policy allows these alone.
 */
import { createHash } from 'node:crypto';
import type { Plugin } from 'vite';
import { writePolicy } from './content-policy.mjs';

const PORT = /[\\/]src[\\/]jobs[\\/]browser-port\.ts$/;
const INSTEAD = [
  [
    "import script from './browser-entry.ts?worker&url';",
    "import InnerWorker from './browser-entry.ts?worker&inline';",
  ],
  ["new Worker(addressOf(lost), { type: 'module' })", 'new InnerWorker()'],
  ['new URL(script, import.meta.url)', 'new URL(location.href)'],
] as const;

/** What would end the element that holds a script, as the script may have it in its strings. */
const inScript = (code: string): string => code.replaceAll('</script', '<\\/script').replaceAll('<!--', '<\\!--');
const inStyle = (css: string): string => css.replaceAll('</style', '<\\/style');
const digestOf = (text: string): string => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

export function oneFilePlugin(): Plugin {
  return {
    name: 'shapeflight-one-file',
    // before types are taken out of the file it changes
    enforce: 'pre',
    apply: 'build',
    transformIndexHtml: {
      // a file that the page asks for by a link of its own is not laid into the styles
      order: 'pre',
      handler: (html) => html.replaceAll(/\s*<link rel="(?!icon)[^>]*>/g, ''),
    },
    transform: {
      filter: { id: PORT },
      handler(code) {
        for (const [from, to] of INSTEAD) {
          if (!code.includes(from)) throw new Error(`browser-port.ts no longer says "${from}".`);
          code = code.replace(from, to);
        }
        return { code, map: null };
      },
    },
    generateBundle: {
      order: 'post',
      handler(_, bundle) {
        const files = Object.values(bundle);
        const page = bundle['index.html'];
        if (page?.type !== 'asset') throw new Error('the build has no index.html');
        const scripts = files.filter((file) => file.type === 'chunk');
        if (scripts.length !== 1) throw new Error(`${scripts.length} scripts, where the one file holds one`);
        const script = inScript(scripts[0].code);
        const styles = files.flatMap((file) =>
          file.type === 'asset' && file.fileName.endsWith('.css') ? [inStyle(String(file.source))] : [],
        );
        const licences = files.find((file) => file.fileName.endsWith('licences.txt'));
        if (licences?.type !== 'asset') throw new Error('the licences are not there');
        const policy = writePolicy({
          'default-src': ["'none'"],
          'script-src': [digestOf(script)],
          'worker-src': ['blob:'],
          'style-src': ["'unsafe-inline'"],
          'img-src': ['data:', 'blob:'],
          'media-src': ['data:', 'blob:'],
          'font-src': ['data:'],
          'connect-src': ['data:', 'blob:'],
          'base-uri': ["'none'"],
        });
        const icon = files.find((file) => file.type === 'asset' && file.fileName.endsWith('.svg'));
        const bare = String(page.source)
          .replaceAll(/\s*<(?:link rel="(?!icon)[^>]*|script[^>]*src=[^>]*><\/script)>/g, '')
          .replace(/href="[^"]*\.svg"/, () =>
            icon?.type === 'asset' ? `href="data:image/svg+xml,${encodeURIComponent(String(icon.source))}"` : '',
          );
        const source = bare
          .replace('<head>', () => `<head>\n    <meta http-equiv="content-security-policy" content="${policy}" />`)
          .replace('</head>', () => `  <style>${styles.join('\n')}</style>\n  </head>`)
          .replace(
            '</body>',
            () =>
              `  <script type="text/plain" id="licences">${inScript(String(licences.source))}</script>\n    <script type="module">${script}</script>\n  </body>`,
          );
        const left =
          /(?:src|href)="(?!data:)[^"]*"/.exec(bare) ?? /url\((?!["']?(?:data:|#))[^)]*\)/.exec(styles.join());
        if (left) throw new Error(`the one file still asks for ${left[0]}`);
        for (const name of Object.keys(bundle)) delete bundle[name];
        this.emitFile({ type: 'asset', fileName: 'shapeflight.html', source });
      },
    },
  };
}
