import { useEffect } from 'react';

/** Rules for the margin of a printed page: what it belongs to at the left, the page's number at the right. */
export const footRules = (words: string): string => {
  const text = words.replace(/["\\\n]/g, ' ');
  const type = "font: 8pt 'Source Sans 3', sans-serif; color: #5a645e;";
  return `@page { @bottom-left { content: "${text}"; ${type} } @bottom-right { content: counter(page) " of " counter(pages); ${type} } }`;
};

/** Puts those words at the foot of every printed page: a sheet torn from its stack still says that it is an example, and of which study. */
export function useSheetFoot(words: string) {
  useEffect(() => {
    if (words === '' || typeof CSSStyleSheet === 'undefined' || !('adoptedStyleSheets' in document)) return undefined;
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(footRules(words));
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
    return () => {
      document.adoptedStyleSheets = document.adoptedStyleSheets.filter((s) => s !== sheet);
    };
  }, [words]);
}
