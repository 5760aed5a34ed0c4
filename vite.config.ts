import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/**
 * The browser part: hashed files, no inline scripts or styles, since the content security policy forbids them. One sheet for all screens: one
 * that is tried again after the program was stopped has its look.
 */
export default defineConfig({
  root: 'src/web',
  plugins: [react()],
  build: {
    outDir: '../../dist/web',
    emptyOutDir: true,
    assetsInlineLimit: 0,
    cssCodeSplit: false,
    sourcemap: false,
    license: { fileName: 'licenses.md' },
  },
});
