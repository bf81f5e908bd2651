/** A rule of lint: every export has a doc block right above it, and is exported where it is declared. */
export const docBlock = {
  meta: {
    type: 'suggestion',
    schema: [],
    messages: {
      missing:
        'An export needs a doc block right above it: one sentence, shapes, units, what it throws, the source.',
      apart: 'Export a name where it is declared, under its doc block.',
    },
  },
  create(context) {
    const isDocumented = (node) => {
      const comment = context.sourceCode.getCommentsBefore(node).at(-1);
      return (
        comment?.type === 'Block' &&
        comment.value.startsWith('*') &&
        comment.loc.end.line >= node.loc.start.line - 1
      );
    };
    /** The second and later of several signatures of one function: the first carries the words. */
    const goesOn = (node) => {
      const name = node.declaration?.id?.name;
      const body = node.parent.body;
      const before = body[body.indexOf(node) - 1];
      return before?.declaration?.type === 'TSDeclareFunction' && before.declaration.id?.name === name;
    };
    return {
      ExportNamedDeclaration(node) {
        if (node.source !== null) return;
        if (node.declaration === null) {
          if (node.specifiers.length > 0) context.report({ node, messageId: 'apart' });
        } else if (!isDocumented(node) && !goesOn(node)) context.report({ node, messageId: 'missing' });
      },
    };
  },
};
