//! One page on a free port of this machine: what the harness is tried on.

use std::io::{BufRead, BufReader, Write};
use std::net::{TcpListener, TcpStream};
use std::thread;

/// Serves this page as long as the test program lives, at `/` as found and at any other path as
/// not found; its address.
/// `LANGUAGE` in the page becomes what the browser asked for.
pub fn serve(html: &str) -> String {
    let listener = TcpListener::bind("127.0.0.1:0").unwrap();
    let origin = format!("http://{}", listener.local_addr().unwrap());
    let html = html.to_owned();
    thread::spawn(move || {
        for stream in listener.incoming().flatten() {
            let html = html.clone();
            // One thread each: a browser opens connections before it knows what to ask.
            thread::spawn(move || answer(stream, &html));
        }
    });
    origin
}

fn answer(mut stream: TcpStream, html: &str) {
    let mut lines = BufReader::new(&stream).lines().map_while(Result::ok);
    let request = lines.next().unwrap_or_default();
    let language = lines
        .take_while(|line| !line.is_empty())
        .filter_map(|line| {
            line.to_lowercase()
                .strip_prefix("accept-language:")
                .map(str::to_owned)
        })
        .next()
        .unwrap_or_default();
    let path = request.split(' ').nth(1).unwrap_or_default();
    let found = path.split('?').next() == Some("/");
    let status = if found { "200 OK" } else { "404 Not Found" };
    let body = html.replace("LANGUAGE", language.trim());
    let head = format!(
        "HTTP/1.1 {status}\r\nContent-Type: text/html; charset=utf-8\r\n\
         Content-Length: {}\r\nConnection: close\r\n\r\n",
        body.len()
    );
    // The browser may have gone on to another page.
    let _ = stream
        .write_all(head.as_bytes())
        .and_then(|()| stream.write_all(body.as_bytes()));
}
