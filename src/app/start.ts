/** Starts the page: the shell defines itself and follows the address. */
import './shell.ts';
