import '@fontsource-variable/commissioner/wght.css';
import './styles/base.css';
import { mount } from 'svelte';
import App from './App.svelte';

mount(App, { target: document.getElementById('studio')! });
