/* Stands in the page "Send us a recipe" as one plain script, so that the page works opened from a disk
   as well: publish/send_page.py gathers it. */

import { beginSending } from "./send-form.js";

beginSending(document);
