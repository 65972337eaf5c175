import { createRequire } from 'node:module';

/** The runtime that the speech library brings. It is CommonJS with re-exported names, which an `import` cannot see. */
export const onnx = createRequire(import.meta.url)('onnxruntime-node') as typeof import('onnxruntime-node');
