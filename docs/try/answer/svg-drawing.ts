/**
 * A drawing of the library as elements, in a shadow tree so that its style sheet and its ids stay its own. The library escapes
 * whatever comes from the input; what could act all the same is refused here, and nothing is shown at all then.
 */
export function drawingInto(host: HTMLElement, svg: string): boolean {
  const root = host.shadowRoot ?? host.attachShadow({ mode: 'open' });
  root.replaceChildren();
  const parsed = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
  if (parsed.localName !== 'svg' || !isStill(parsed)) return false;
  const style = document.createElement('style');
  style.textContent = 'svg { display: block; width: 100%; height: auto; }';
  root.append(style, document.importNode(parsed, true));
  return true;
}

/** What a drawing is made of. */
const ELEMENTS = new Set(
  'svg title desc style defs pattern clipPath g path line rect circle ellipse polyline polygon text tspan use'.split(
    ' ',
  ),
);

/** Nothing but a drawing: no scripts, no links, no handlers, nothing from elsewhere. */
function isStill(root: Element): boolean {
  return [root, ...root.querySelectorAll('*')].every(
    (element) =>
      ELEMENTS.has(element.localName) &&
      [...element.attributes].every(
        ({ name, value }) => !name.startsWith('on') && (!/href$/.test(name) || value.startsWith('#')),
      ) &&
      (element.localName !== 'style' || !/@import|url\s*\((?!#)/i.test(element.textContent)),
  );
}
