import { afterEach, expect, it } from 'vitest';
import { keepFocus } from './focus-keeper.ts';

let stop = () => {};
afterEach(() => {
  stop();
  document.body.innerHTML = '';
});

function page(html: string) {
  document.body.innerHTML = `<main>${html}</main><button id="outside"></button>`;
  stop = keepFocus(document.querySelector('main')!);
  return (id: string) => document.getElementById(id)!;
}

const settled = () => new Promise((done) => setTimeout(done, 20));
const focused = () => document.activeElement?.id;

it('goes to the first control of what came in the place of a button, and back', async () => {
  const by = page('<section id="s"><p id="p"><button id="change"></button></p></section>');
  by('change').focus();
  by('p').outerHTML = '<form id="f"><input id="off" disabled><input id="first"><button id="cancel"></button></form>';
  await settled();
  expect(focused()).toBe('first');
  by('cancel').focus();
  by('f').outerHTML = '<p><button id="again"></button></p>';
  await settled();
  expect(focused()).toBe('again');
});

it('goes to the part that still stands where nothing came', async () => {
  const by = page('<section id="list"><p id="row"><button id="out"></button></p><p><button id="other"></button></p></section>');
  by('out').focus();
  by('row').remove();
  await settled();
  expect(focused()).toBe('list');
});

it('comes back to a button that was switched off while it worked', async () => {
  const by = page('<section><button id="save"></button></section>');
  const save = by('save') as HTMLButtonElement;
  save.focus();
  save.blur();
  save.disabled = true;
  await settled();
  expect(document.activeElement).toBe(document.body);
  save.disabled = false;
  await settled();
  expect(focused()).toBe('save');
});

it('leaves focus alone that is elsewhere, that a pointer took, or that another page has', async () => {
  const by = page('<section><p id="row"><button id="out"></button></p></section>');
  by('out').focus();
  by('outside').focus();
  by('row').remove();
  await settled();
  expect(focused()).toBe('outside');
  const again = page('<section><p id="row"><button id="out"></button></p></section>');
  again('out').focus();
  document.dispatchEvent(new Event('pointerdown'));
  again('row').remove();
  await settled();
  expect(document.activeElement).toBe(document.body);
});
