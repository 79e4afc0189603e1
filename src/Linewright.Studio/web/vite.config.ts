import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vite';

// The pages end up inside the assembly; the project file takes them from there.
export default defineConfig({
  plugins: [svelte()],
  base: './',
  build: { outDir: '../obj/web', emptyOutDir: true, target: 'es2022', chunkSizeWarningLimit: 1500, assetsInlineLimit: 0 },
});
