/**
 * A sitting as a local web page: a second face beside the command line, over the same dialogue. It
 * knows how a browser is served and what it may ask; it must not know how anything is diagnosed.
 */
package straywire.web;
