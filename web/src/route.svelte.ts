/** Where the app is: the path of the page, so that back, reload and links work as everywhere. */

export type Chapter = 'happened' | 'way-in' | 'people' | 'readings' | 'fit' | 'way-back' | 'report';

export const CHAPTERS: readonly Chapter[] = ['happened', 'way-in', 'people', 'readings', 'fit', 'way-back', 'report'];

export type Route =
  | { readonly screen: 'banks' }
  | { readonly screen: 'bank'; readonly bank: string; readonly tab: string }
  | { readonly screen: 'job'; readonly job: string; readonly chapter: Chapter }
  | { readonly screen: 'settings' }
  | { readonly screen: 'lost'; readonly path: string };

export function parse(path: string): Route {
  const parts = path
    .split('/')
    .filter((p) => p !== '')
    .map(decode);
  const [first, second, third] = parts;
  if (first === undefined || (first === 'banks' && second === undefined)) {
    return { screen: 'banks' };
  }
  if (first === 'banks' && second !== undefined) {
    return { screen: 'bank', bank: second, tab: third ?? 'overview' };
  }
  if (first === 'jobs' && second !== undefined) {
    const chapter = CHAPTERS.find((c) => c === third);
    return third === undefined || chapter !== undefined
      ? { screen: 'job', job: second, chapter: chapter ?? 'happened' }
      : { screen: 'lost', path };
  }
  return first === 'settings' ? { screen: 'settings' } : { screen: 'lost', path };
}

function decode(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}

class Router {
  route = $state.raw<Route>(parse(location.pathname));

  constructor() {
    addEventListener('popstate', () => this.#show());
  }

  go(path: string, replace = false): void {
    history[replace ? 'replaceState' : 'pushState'](null, '', path);
    this.#show();
    scrollTo(0, 0);
    // A reader of the screen hears the new page from its heading.
    requestAnimationFrame(() => document.querySelector<HTMLElement>('h1')?.focus());
  }

  #show(): void {
    this.route = parse(location.pathname);
  }
}

export const router = new Router();

/** For links: an ordinary link that stays in the app. */
export function follow(event: MouseEvent): void {
  const link = (event.target as Element).closest('a');
  if (
    link !== null &&
    link.origin === location.origin &&
    link.target === '' &&
    !link.hasAttribute('download') &&
    !event.defaultPrevented &&
    event.button === 0 &&
    !(event.metaKey || event.ctrlKey || event.shiftKey || event.altKey)
  ) {
    event.preventDefault();
    router.go(link.pathname);
  }
}
