import { mount } from 'svelte';
import App from './App.svelte';
import './style/base.css';

const target = document.getElementById('app');
if (target === null) {
  throw new Error('the page has no place for the app');
}
mount(App, { target });
