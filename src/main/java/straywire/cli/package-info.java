/**
 * The command line: thin commands that read arguments, call the bench and print. No logic of its
 * own; only this package writes to the terminal.
 */
package straywire.cli;
