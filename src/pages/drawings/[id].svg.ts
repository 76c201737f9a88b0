import type { APIRoute, GetStaticPaths } from 'astro';
import { DRAWINGS } from '../../drawings/drawings.ts';
import { renderDrawing } from '../../drawings/kit/render.ts';
import type { LineDrawing } from '../../drawings/kit/drawing.ts';
import drawingTokenSheet from '../../styles/drawing-tokens.css?raw';
import tokenSheet from '../../styles/tokens.css?raw';

export const getStaticPaths = (() =>
  DRAWINGS.map((drawing) => ({
    params: { id: drawing.id },
    props: { drawing },
  }))) satisfies GetStaticPaths;

/** Each line drawing as a file of its own: it is asked for when a reader comes near it. */
export const GET: APIRoute<{ readonly drawing: LineDrawing }> = ({ props }) =>
  new Response(renderDrawing(props.drawing, [tokenSheet, drawingTokenSheet]));
