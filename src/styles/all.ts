/** Every style sheet of the workbook, in the order in which they stand. */
import './tokens.css';
import './fonts.css';
import './base.css';
import './page.css';
import './parts.css';
import './papers.css';
import './blocks.css';
import './forms.css';
import './figures.css';
import './print.css';
