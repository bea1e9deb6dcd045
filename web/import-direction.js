import path from 'node:path';

const source = path.join(import.meta.dirname, 'src');
// what stands further left may not see what stands further right
const layers = ['lib', 'components', 'features', 'app'];

const placeOf = (file) => {
  const [layer, feature] = path.relative(source, file).split(path.sep);
  return { layer, feature };
};

/** Imports point one way: lib, components, features, app; a feature imports no other feature. */
export const importDirection = {
  meta: { type: 'problem', schema: [] },
  create(context) {
    const from = placeOf(context.filename);
    const check = (node) => {
      const target = node.source?.value;
      if (typeof target !== 'string' || !target.startsWith('.')) return;
      const to = placeOf(path.resolve(path.dirname(context.filename), target));
      if (!layers.includes(from.layer) || !layers.includes(to.layer)) return;
      if (layers.indexOf(to.layer) > layers.indexOf(from.layer))
        context.report({ node, message: `${from.layer} may not import from ${to.layer}: move what both need to the left.` });
      else if (from.layer === 'features' && to.layer === 'features' && from.feature !== to.feature)
        context.report({
          node,
          message: `feature ${from.feature} may not import feature ${to.feature}: pages are put together in app, shared parts stand in components.`,
        });
    };
    return { ImportDeclaration: check, ExportNamedDeclaration: check, ExportAllDeclaration: check, ImportExpression: check };
  },
};
