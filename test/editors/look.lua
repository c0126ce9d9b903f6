-- Runs inside Neovim: does what a coach would do and writes what he would see, as JSON, to $SEEN.
local seen = {}
local function finish()
  vim.fn.writefile({ vim.fn.json_encode(seen) }, vim.env.SEEN)
  vim.cmd('qa!')
end
local function within(milliseconds, ask)
  if vim.wait(milliseconds, ask, 20) then return end
  seen.waited = debug.traceback()
  finish()
end

within(15000, function() return #vim.diagnostic.get(0) > 0 end)
seen.findings = vim.tbl_map(function(found)
  return { line = found.lnum, words = vim.api.nvim_buf_get_lines(0, found.lnum, found.lnum + 1, true)[1]:sub(found.col + 1, found.end_col), message = found.message }
end, vim.diagnostic.get(0))

if vim.lsp.buf.format then vim.lsp.buf.format({ timeout_ms = 10000 }) else vim.lsp.buf.formatting_sync(nil, 10000) end
seen.formatted = vim.api.nvim_buf_get_lines(0, 0, -1, true)

-- At the end of the last line, in insert mode, as Ctrl+X Ctrl+O does it; what the menu holds is read while it is open.
local function keys(typed) vim.api.nvim_feedkeys(vim.api.nvim_replace_termcodes(typed, true, false, true), 'n', false) end
local timer = vim.loop.new_timer()
local tries = 0
timer:start(200, 50, vim.schedule_wrap(function()
  tries = tries + 1
  local items = vim.fn.complete_info({ 'items' }).items
  if #items == 0 and tries < 200 then return end
  timer:stop()
  seen.offered = vim.tbl_map(function(item) return item.word end, items)
  finish()
end))
keys('Go    1 passes to <C-x><C-o>')
