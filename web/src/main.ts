import { mount } from 'svelte';
import App from './App.svelte';
import './style/base.css';
import { mayStart } from './version/started';

const target = document.getElementById('app');
if (target === null) {
  throw new Error('the page has no place for the app');
}
const place = target;
// A browser that keeps nothing for pages has no version to stay with.
void mayStart()
  .catch(() => true)
  .then((may) => may && mount(App, { target: place }));
