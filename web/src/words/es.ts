import type { Key } from './en-US';

/** Spanish. A sentence that is not here yet is shown in English; `tests/unit` counts them. */
export const es: Partial<Record<Key, string>> = {
  'app.skip': 'Ir a la página',
  'app.loading': 'Iniciando …',
  'nav.banks': 'Bancos',
  'nav.settings': 'Ajustes',
};
