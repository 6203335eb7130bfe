/** The one function of svgdom that is used; the package has no typings. */
declare module "svgdom" {
  export function createHTMLWindow(): { readonly document: { readonly defaultView: unknown } };
}
