import '@fontsource-variable/inter/wght.css';
import './style/workbench.css';
import './style/print.css';
import { pageStyle } from '@soundpost/documents/page-style';
import { createRoot } from 'react-dom/client';
import { App } from './app/app.tsx';
import { PlantStore } from './engine/plant-store.ts';

// The drawings and tables of the documents bring the one style sheet they have on paper.
const sheet = new CSSStyleSheet();
sheet.replaceSync(`@layer documents{${pageStyle}}`);
document.adoptedStyleSheets = [sheet];

const another = () =>
  new Worker(new URL('./engine/engine-worker.ts', import.meta.url), { type: 'module', name: 'engine' });
const store = new PlantStore(another);
// Closing the page while something cannot reach the file asks first.
window.addEventListener('beforeunload', (event) => {
  const { saving } = store.snapshot();
  if (saving === 'offline' || saving === 'stranger') event.preventDefault();
});
createRoot(document.getElementById('root')!).render(<App store={store} />);
