# small_site(FOLDER): four pages in the shape that Doxygen gives them.
function(page folder name title contents)
    file(WRITE "${folder}/${name}.html"
         "<html><body><div class=\"title\">${title}</div>\n<div class=\"contents\">\n${contents}</div><!-- contents -->\n</body></html>\n")
endfunction()
function(small_site folder)
    file(REMOVE_RECURSE "${folder}")
    page("${folder}" index Front "<p>Where to begin: <a href=\"answers_page.html#hot\">hot clamp</a>.</p>\n")
    page("${folder}" answers_page Answers
         "<p>From the shop.</p>\n<h1><a class=\"anchor\" id=\"hot\"></a>\nMy clamp is hot</h1>\n<p>Rust under jaws; paint &amp; \"scale\".</p>
<h2><a class=\"anchor\" id=\"leads\"></a>\nTwo leads</h2>\n<p>They share 400 A. Each lead has its own ends.</p>\n")
    page("${folder}" bibliography_page Bibliography
         "<h1><a class=\"anchor\" id=\"read\"></a>\nHot clamp, hot lead: sources</h1>\n<p>hot hot hot clamp clamp rust paint</p>\n")
    page("${folder}" theory_page Theory
         "<h1><a class=\"anchor\" id=\"spots\"></a>\nSpots</h1>\n<p>Paint leaves none; rust leaves few. <code>a\\b</code> &lt;x&gt;</p>\n")
    page("${folder}" find_page Find "<p>not searched: hot clamp</p>\n")
endfunction()
