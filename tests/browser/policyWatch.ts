import type { Browser, BrowserContext } from 'playwright-core';

const MARK = 'policy violated: ';
/** What the pages of this file did against the content policy, and every request that left for another host. */
export const policyTroubles: string[] = [];

/** Each context of this browser tells of violations and of requests to other hosts. Service workers only where a test asks for them. */
export function watched(browser: Browser): Browser {
  const open = browser.newContext.bind(browser);
  browser.newContext = async (options) => {
    const context = await open({ serviceWorkers: 'block', ...options });
    await watch(context);
    return context;
  };
  browser.newPage = async (options) => (await browser.newContext(options)).newPage();
  return browser;
}

async function watch(context: BrowserContext): Promise<void> {
  await context.addInitScript((mark) => {
    addEventListener('securitypolicyviolation', ({ violatedDirective, blockedURI, sourceFile, sample }) => {
      console.warn(`${mark}${violatedDirective} ${blockedURI} ${sourceFile} ${sample}`);
    });
  }, MARK);
  context.on('console', (line) => {
    if (line.text().startsWith(MARK)) policyTroubles.push(line.text());
  });
  context.on('request', (request) => {
    const { protocol, hostname } = new URL(request.url());
    // No public server has a name under .test (RFC 6761, section 6.2): such a one is this machine by another name.
    if (/^(http|ws)s?:$/.test(protocol) && hostname !== '127.0.0.1' && !hostname.endsWith('.test'))
      policyTroubles.push(`asked ${request.url()}`);
  });
}
