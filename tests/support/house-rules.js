/** Rules of the house that no linter brings: both linters take them from here. */
import { docBlock } from './doc-block.js';

/** A rule that refuses whatever a selector finds. */
const refuse = (selector, message) => ({
  meta: { type: 'problem', schema: [] },
  create: (context) => ({ [selector]: (node) => context.report({ node, message }) }),
});

export default {
  meta: { name: 'house' },
  rules: {
    'doc-block': docBlock,
    'no-d3-star': refuse(
      "ImportDeclaration[source.value='d3'] ImportNamespaceSpecifier",
      'Import the d3 functions you need by name: the whole of d3 would weigh down every page.',
    ),
    'no-default-export': refuse('ExportDefaultDeclaration', 'The core uses named exports only.'),
    'no-enum': refuse('TSEnumDeclaration', 'Use a literal union made from one array.'),
    'no-export-star': refuse(
      'ExportAllDeclaration',
      'Export by name, so that the door of a folder says what goes through it.',
    ),
    'no-inline-style': refuse(
      "SvelteAttribute[key.name='style'], SvelteStyleDirective, JSXAttribute[name.name='style']",
      'The content policy forbids inline styles: use a class or an SVG presentation attribute.',
    ),
  },
};
